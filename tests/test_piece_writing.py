"""A piece is written as it was read, one value is changed alone, and a file is saved whole or not at all."""

from __future__ import annotations

import os
import tomllib
from pathlib import Path

import pytest
from hypothesis import given
from hypothesis import strategies as some

from woodmath.errors import BadPiece, NotWritten
from woodmath.piece import Piece
from woodmath.piece_file import demo_names, demo_text
from woodmath.piece_origin import scaled_piece
from woodmath.piece_places import value_places
from woodmath.piece_saving import free_name, save
from woodmath.piece_writing import changed_text, piece_text

CAT_BED = demo_text("cat-bed")


@pytest.mark.parametrize("name", demo_names())
def test_a_demo_piece_reads_back_the_same_from_what_is_written(name: str) -> None:
    piece = Piece.demo(name)
    assert Piece.from_text(piece_text(piece)) == piece


@given(scale=some.fractions(min_value="1/3", max_value=3, max_denominator=97))
def test_sizes_between_the_marks_are_written_exactly(scale: object) -> None:
    piece = scaled_piece(Piece.demo("cat-bed"), str(scale), "Any")
    assert Piece.from_text(piece_text(piece)) == piece


def test_a_length_on_a_mark_is_written_as_on_the_rule_with_its_meaning_behind_it() -> None:
    text = piece_text(Piece.demo("cat-bed"))
    assert 'square = "1 3/4"              # side of the post\'s square section\n' in text
    assert "[joint.tongue]" in text and '{ place = "3/4", width = "2 1/2" },' in text


def test_what_came_out_otherwise_is_written_apart_and_reads_back() -> None:
    measured = (
        '\n[as_made]\ncut = ["posts"]\n[as_made.joint]\nset_back = "7/16"\n'
        'tenons = [{ place = "1", width = "2" }]\n[as_made.rocker.tenon]\nwidth = 1.2\n[as_made.bit]\nlead = "1/8"\n'
    )
    piece = Piece.from_text(CAT_BED + measured)
    again = Piece.from_text(piece_text(piece))
    assert again == piece and again.planned == piece.planned and again.changes == piece.changes


@pytest.mark.parametrize("name", ['the "best"', "back\\slash", "<b>&</b>", "猫の寝床", "[post] # = '"])
def test_a_name_with_any_printable_sign_is_written_and_read_back(name: str) -> None:
    piece = scaled_piece(Piece.demo("cat-bed"), "2", name)
    assert Piece.from_text(piece_text(piece)).name == name


def test_a_changed_value_changes_its_line_alone() -> None:
    new = changed_text(CAT_BED, ("post", "square"), "2")
    changed = [
        pair for pair in zip(CAT_BED.splitlines(), new.splitlines(), strict=True) if len(set(pair)) > 1
    ]
    [(old_line, new_line)] = changed
    assert new_line.startswith('square = "2" ') and new_line.index("#") == old_line.index("#")
    assert changed_text(new, ("post", "square"), "1 3/4") == CAT_BED


@pytest.mark.parametrize(
    ("path", "value"),
    [
        (("name",), 'a "new" name # not a remark'),
        (("joint", "tenons", 1, "width"), "2"),
        (("joint", "tongue", "length"), "1/4"),
        (("bit", "threads_per_inch"), 10),
        (("tools", "bits"), ["1/4", "1/2"]),
        (("boards", "on_hand", 2, "count"), 3),
        (("joint", "reserve"), "1/4"),
        (("load", 1, "mass"), "9 lb"),
        (("load", 0, "offset"), "1"),
        (("load", 1, "gyration_radius"), None),
        (("finish", "oil"), "linseed"),
        (("scale",), "2"),
        (("bottom", "cleat"), None),
    ],
)
@pytest.mark.parametrize("line_end", ["\n", "\r\n"])
def test_any_value_can_be_changed_and_all_others_stay(
    path: tuple[str | int, ...], value: str | float | list[str] | None, line_end: str
) -> None:
    text = CAT_BED.replace("\n", line_end)
    before, after = tomllib.loads(text), tomllib.loads(changed_text(text, path, value))
    assert _leaf(after, path) == value
    expected = {each: told for each, told in _leaves(before).items() if each[: len(path)] != path}
    found = {each: told for each, told in _leaves(after).items() if each[: len(path)] != path}
    assert found == expected
    remarks = [
        line.partition("#")[2].strip()
        for line in CAT_BED.splitlines()
        if "#" in line and not line.startswith(("cleat", 'gyration_radius = "2'))
    ]
    assert all(remark in changed_text(text, path, value) for remark in remarks)


def _leaf(given: object, path: tuple[str | int, ...]) -> object:
    for step in path:
        if isinstance(given, dict) and step not in given:
            return None
        given = given[step]  # type: ignore[index]
    return given


def _leaves(given: object, path: tuple[str | int, ...] = ()) -> dict[tuple[str | int, ...], object]:
    inside = given.items() if isinstance(given, dict) else enumerate(given) if isinstance(given, list) else ()
    found = {} if isinstance(given, (dict, list)) else {path: given}
    for step, value in inside:
        found |= _leaves(value, (*path, step))
    return found


@pytest.mark.parametrize(
    ("text", "path"),
    [("post = { square = 1 }", ("post", "top")), ("post = 3", ("post", "square")), ("a = [1", ("a",))],
)
def test_what_cannot_be_changed_alone_is_said_and_nothing_is_guessed(
    text: str, path: tuple[str, ...]
) -> None:
    with pytest.raises(BadPiece):
        changed_text(text, path, "2")


@pytest.mark.parametrize("name", demo_names())
def test_every_value_of_a_text_is_found_where_it_stands(name: str) -> None:
    text = demo_text(name)
    given = tomllib.loads(text)
    for path, (start, end) in value_places(text).items():
        here: object = given
        for step in path:
            here = here[step]  # type: ignore[index]
        assert tomllib.loads(f"x = {text[start:end]}")["x"] == here


def test_values_in_odd_dress_are_found_too() -> None:
    text = (
        'a."b c".d = """x\ny"""\ne = \'lit # eral\'\n[[r]]\nq = 1 # one\n[[r]]\nq = [ 1, # two\n [2, 3] ]\n'
    )
    places = {path: text[start:end] for path, (start, end) in value_places(text).items()}
    assert places[("a", "b c", "d")] == '"""x\ny"""' and places[("e",)] == "'lit # eral'"
    assert places[("r", 0, "q")] == "1" and places[("r", 1, "q", 1, 0)] == "2"


def test_a_file_is_saved_where_there_is_none(tmp_path: Path) -> None:
    place = save(CAT_BED, tmp_path / "bed.toml")
    assert Piece.read(place) == Piece.demo("cat-bed")
    assert [file.name for file in tmp_path.iterdir()] == ["bed.toml"]


def test_a_file_that_is_there_stays_unless_it_may_be_replaced(tmp_path: Path) -> None:
    save(CAT_BED, tmp_path / "bed.toml")
    with pytest.raises(NotWritten, match=r"is there already, and nothing was written\. .*bed-2\.toml"):
        save("name = 3", tmp_path / "bed.toml")
    assert (tmp_path / "bed.toml").read_text(encoding="utf-8") == CAT_BED
    save("name = 3", tmp_path / "bed.toml", replace=True)
    assert (tmp_path / "bed.toml").read_text(encoding="utf-8") == "name = 3"
    assert [file.name for file in tmp_path.iterdir()] == ["bed.toml"]


def test_a_file_that_appears_while_it_is_being_written_is_not_overwritten(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    place = tmp_path / "bed.toml"
    monkeypatch.setattr(os, "fsync", lambda _: place.write_text("theirs", encoding="utf-8"))
    with pytest.raises(NotWritten, match="is there already"):
        save(CAT_BED, place)
    assert place.read_text(encoding="utf-8") == "theirs"
    assert [file.name for file in tmp_path.iterdir()] == ["bed.toml"]


@pytest.mark.parametrize("step", ["fsync", "replace"])
def test_whatever_fails_the_old_file_is_there_whole_and_no_half_one_beside_it(
    step: str, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    place = tmp_path / "bed.toml"
    save("old", place)

    def fails(*_: object) -> None:
        raise OSError(28, "No space left on device")

    monkeypatch.setattr(os, step, fails)
    with pytest.raises(NotWritten, match="No space left on device"):
        save(CAT_BED, place, replace=True)
    assert place.read_text(encoding="utf-8") == "old"
    assert [file.name for file in tmp_path.iterdir()] == ["bed.toml"]


def test_a_broken_off_save_leaves_the_old_file_too(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    place = tmp_path / "bed.toml"
    save("old", place)

    def interrupted(*_: object) -> None:
        raise KeyboardInterrupt

    monkeypatch.setattr(os, "fsync", interrupted)
    with pytest.raises(KeyboardInterrupt):
        save(CAT_BED, place, replace=True)
    assert place.read_text(encoding="utf-8") == "old"
    assert [file.name for file in tmp_path.iterdir()] == ["bed.toml"]


def test_a_disk_that_knows_no_second_name_is_written_to_all_the_same(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    def unknown(*_: object) -> None:
        raise PermissionError(1, "Operation not permitted")

    monkeypatch.setattr(os, "link", unknown)
    save(CAT_BED, tmp_path / "bed.toml")
    assert (tmp_path / "bed.toml").read_text(encoding="utf-8") == CAT_BED


@pytest.mark.parametrize("name", ["bed", "bed.txt", "bed\n.toml", ".toml"])
def test_a_name_that_is_none_for_a_piece_is_refused(name: str, tmp_path: Path) -> None:
    with pytest.raises(NotWritten, match=r"my-bed\.toml"):
        save(CAT_BED, tmp_path / name)
    assert list(tmp_path.iterdir()) == []


def test_a_folder_that_is_not_there_is_not_made(tmp_path: Path) -> None:
    with pytest.raises(NotWritten, match="Choose a folder that is there"):
        save(CAT_BED, tmp_path / "nowhere" / "bed.toml")
    assert list(tmp_path.iterdir()) == []


def test_a_text_that_could_never_be_read_again_is_not_written(tmp_path: Path) -> None:
    with pytest.raises(NotWritten, match="at most"):
        save("#" * 70000, tmp_path / "bed.toml")
    assert list(tmp_path.iterdir()) == []


def test_a_free_name_is_one_that_no_file_has(tmp_path: Path) -> None:
    for name in ("bed.toml", "bed-2.toml", "bed-3.toml"):
        save(CAT_BED, tmp_path / name)
    assert free_name(tmp_path / "bed.toml") == "bed-4.toml"
