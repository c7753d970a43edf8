"""What a page imports, in one line: the piece, the topics, the views, and the three things that a page does.

Each is loaded when a page asks for it: no page wants all of them, and it opens the sooner for those it does not.
"""

from __future__ import annotations

import importlib
from collections.abc import Mapping
from types import MappingProxyType

_TOPICS = (
    "air_and_moisture",
    "bevel",
    "boring",
    "edges",
    "ellipse",
    "facing",
    "grain_strength",
    "ornament",
    "planing_direction",
    "plate_scale",
    "post_joint",
    "regular_mitre",
    "ring_section",
    "rocker_choice",
    "rocking",
    "rocking_measured",
    "running_marks",
    "scaling",
    "season_derivations",
    "setting_out",
    "splay",
    "splayed_corner",
    "tenon_fibres",
    "timber",
    "turning",
    "wood_movement",
)
_PLACES: Mapping[str, str] = MappingProxyType(
    {
        "Piece": "piece",
        "answers_for": "exercises",
        "board_through_the_year": "views.board_through_the_year",
        "bored_hole": "views.boring",
        "bottom_between_sides": "views.level_bottom",
        "card_end": "views.card_end",
        "check_installation": "self_check",
        "compare": "comparison",
        "crooked_square": "views.crooked_square",
        "demo_text": "piece_file",
        "dividers_and_datum": "views.setting_out_dividers",
        "dividers_opened": "views.dividers",
        "edge_in_section": "views.edges",
        "edit": "piece_editor",
        "four_posts": "views.setting_out",
        "grain_in_the_tenon": "views.grain_in_the_tenon",
        "hands_in_plan": "views.setting_out_hands",
        "live_rocker": "views.live_rocker",
        "look": "explorer",
        "mitre_through_the_year": "views.mitre_through_the_year",
        "movement_figures": "timber_shown",
        "ornament_step_by_step": "views.ornament_lesson",
        "ornamented_panel": "views.ornament_panel",
        "own_ornament": "views.ornament_own",
        "panel_corner": "views.edges_corner",
        "panel_through_the_year": "views.panel_through_the_year",
        "pins_and_string": "views.ellipse",
        "planter_corner": "views.splayed_corner",
        "post_net": "views.setting_out_net",
        "post_section": "views.post_joint",
        "rocker_for_a_wish": "views.rocker_for_a_wish",
        "row_of_holes": "views.hole_rows",
        "running_marks_compared": "views.running_marks",
        "scaling_table": "piece_scaling",
        "sheet_at_true_size": "sheet",
        "sloped_edge": "views.sloped_edge",
        "splayed_end": "views.splayed_panel",
        "square_to_round": "views.square_to_round",
        "story_stick": "views.setting_out_stick",
        "strength_figures": "timber_shown",
        "struck_bevel": "views.bevel",
        "trial_holes": "views.trial_holes",
        "turned_top": "views.turned_top",
        "two_sizes": "views.two_sizes",
        "whole_piece": "views.piece",
        "wood_in_the_air": "views.wood_in_the_air",
    }
)
"""In which module everything else is."""

__all__ = tuple(sorted((*_PLACES, *_TOPICS)))


def __getattr__(name: str) -> object:
    """Return what a page asks for by its name.

    Parameters
    ----------
    name : str
        One of `__all__`.

    Returns
    -------
    object
        A topic, a view, or a tool of the pages.

    Raises
    ------
    AttributeError
        If pages are offered nothing of that name, as Python expects it.

    >>> import woodmath.page
    >>> woodmath.page.bevel.bevel_angle(offset=1, thickness=1)
    45.0
    """
    if name in _TOPICS:
        return importlib.import_module(f"woodmath.{name}")
    if name in _PLACES:
        return getattr(importlib.import_module(f"woodmath.{_PLACES[name]}"), name)
    raise AttributeError(f"Pages are offered no {name!r}. There are: {', '.join(__all__)}.")


def __dir__() -> list[str]:
    return list(__all__)
