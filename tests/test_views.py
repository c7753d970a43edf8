"""Every live drawing, at every combination of its sliders' ends and at random settings: always a picture."""

from __future__ import annotations

import importlib
import pkgutil

import pytest
from picture_checks import (
    assert_sound,
    assert_sound_and_readable,
    corners_of,
    random_settings,
    unfinished_tables,
)

import woodmath.views
from woodmath.errors import ImpossibleShape, WoodmathError
from woodmath.piece import Piece
from woodmath.views.view import Settings, TableControl, View

PIECES = ("cat-bed", "log-box")
WITHOUT_THE_PART = {("pins_and_string", "log-box")}


def all_views() -> list[View]:
    """Return every view of the package, found by looking into its modules."""
    names = [module.name for module in pkgutil.iter_modules(woodmath.views.__path__)]
    modules = [importlib.import_module(f"woodmath.views.{name}") for name in names]
    found = {
        value.name: value for module in modules for value in vars(module).values() if isinstance(value, View)
    }
    return [found[name] for name in sorted(found)]


VIEWS = all_views()
every_view = pytest.mark.parametrize("view", VIEWS, ids=[view.name for view in VIEWS])
every_piece = pytest.mark.parametrize("demo", PIECES)
every_start = pytest.mark.parametrize(
    ("view", "demo"),
    [
        pytest.param(view, demo, id=f"{view.name}-{demo}")
        for view in VIEWS
        for demo in PIECES
        if (view.name, demo) not in WITHOUT_THE_PART
    ],
)


def test_no_live_drawing_is_left_out() -> None:
    assert {view.name for view in VIEWS} >= {
        "bored_hole",
        "pins_and_string",
        "post_section",
        "row_of_holes",
        "struck_bevel",
        "trial_holes",
        "whole_piece",
    }


def start_of(view: View, demo: str) -> Settings:
    """Return what a view begins with; nothing where the piece has no such part (corners set all)."""
    return {} if (view.name, demo) in WITHOUT_THE_PART else view.settings(Piece.demo(demo))


@every_start
def test_a_view_starts_from_the_piece_with_a_sound_picture(view: View, demo: str) -> None:
    piece = Piece.demo(demo)
    assert set(view.settings(piece)) >= {control.name for control in view.controls}
    drawing = view.drawing(piece)
    assert_sound_and_readable(drawing)


@every_view
@every_piece
def test_every_corner_of_the_sliders_is_a_sound_picture_with_readable_words(view: View, demo: str) -> None:
    rule, start = Piece.demo(demo).rule, start_of(view, demo)
    for corner in corners_of(view, rule):
        drawing = view.draw(rule, {**start, **corner})
        try:
            assert_sound_and_readable(drawing)
        except AssertionError as fault:
            raise AssertionError(f"{view.name} at {corner}: {fault}") from fault


@every_view
@every_piece
def test_three_hundred_random_settings_are_sound_pictures(view: View, demo: str) -> None:
    rule, start = Piece.demo(demo).rule, start_of(view, demo)
    # Half of them on an inch rule, the others in millimetres.
    for settings in random_settings(view, rule, count=150, seed=PIECES.index(demo)):
        drawing = view.draw(rule, {**start, **settings})
        try:
            assert_sound(drawing)
        except AssertionError as fault:
            raise AssertionError(f"{view.name} at {settings}: {fault}") from fault


@every_view
@every_piece
def test_an_unfinished_table_is_met_with_a_sentence(view: View, demo: str) -> None:
    rule, start = Piece.demo(demo).rule, start_of(view, demo)
    for control in view.controls:
        if isinstance(control, TableControl):
            for table in unfinished_tables(control):
                with pytest.raises(WoodmathError, match=r"\.$"):
                    view.draw(rule, {**start, control.name: table})


@pytest.mark.parametrize(("name", "demo"), sorted(WITHOUT_THE_PART))
def test_a_piece_without_the_part_says_so(name: str, demo: str) -> None:
    (view,) = (view for view in VIEWS if view.name == name)
    with pytest.raises(ImpossibleShape, match="has no rocker"):
        view.settings(Piece.demo(demo))


@every_start
def test_the_words_under_a_picture_are_sentences(view: View, demo: str) -> None:
    drawing = view.drawing(Piece.demo(demo))
    for sentence in (drawing.headline, drawing.told, *drawing.faults):
        assert not sentence or sentence.rstrip()[-1] in ".?"
        assert "  " not in sentence
