"""What a page imports, in one line: the piece, the topics, the views, and the three things that a page does."""

from woodmath import (
    air_and_moisture,
    bevel,
    boring,
    edges,
    ellipse,
    facing,
    grain_strength,
    ornament,
    planing_direction,
    plate_scale,
    post_joint,
    regular_mitre,
    ring_section,
    rocker_choice,
    rocking,
    rocking_measured,
    running_marks,
    scaling,
    season_derivations,
    setting_out,
    splay,
    splayed_corner,
    tenon_fibres,
    timber,
    turning,
    wood_movement,
)
from woodmath.comparison import compare
from woodmath.exercises import answers_for
from woodmath.explorer import look
from woodmath.piece import Piece
from woodmath.piece_editor import edit
from woodmath.piece_file import demo_text
from woodmath.piece_scaling import scaling_table
from woodmath.self_check import check_installation
from woodmath.sheet import sheet_at_true_size
from woodmath.timber_shown import movement_figures, strength_figures
from woodmath.views.bevel import struck_bevel
from woodmath.views.board_through_the_year import board_through_the_year
from woodmath.views.boring import bored_hole
from woodmath.views.card_end import card_end
from woodmath.views.crooked_square import crooked_square
from woodmath.views.dividers import dividers_opened
from woodmath.views.edges import edge_in_section
from woodmath.views.edges_corner import panel_corner
from woodmath.views.ellipse import pins_and_string
from woodmath.views.grain_in_the_tenon import grain_in_the_tenon
from woodmath.views.hole_rows import row_of_holes
from woodmath.views.level_bottom import bottom_between_sides
from woodmath.views.live_rocker import live_rocker
from woodmath.views.mitre_through_the_year import mitre_through_the_year
from woodmath.views.ornament_lesson import ornament_step_by_step
from woodmath.views.ornament_own import own_ornament
from woodmath.views.ornament_panel import ornamented_panel
from woodmath.views.panel_through_the_year import panel_through_the_year
from woodmath.views.piece import whole_piece
from woodmath.views.post_joint import post_section
from woodmath.views.rocker_for_a_wish import rocker_for_a_wish
from woodmath.views.running_marks import running_marks_compared
from woodmath.views.setting_out import four_posts
from woodmath.views.setting_out_dividers import dividers_and_datum
from woodmath.views.setting_out_hands import hands_in_plan
from woodmath.views.setting_out_net import post_net
from woodmath.views.setting_out_stick import story_stick
from woodmath.views.sloped_edge import sloped_edge
from woodmath.views.splayed_corner import planter_corner
from woodmath.views.splayed_panel import splayed_end
from woodmath.views.square_to_round import square_to_round
from woodmath.views.trial_holes import trial_holes
from woodmath.views.turned_top import turned_top
from woodmath.views.two_sizes import two_sizes
from woodmath.views.wood_in_the_air import wood_in_the_air

__all__ = [
    "Piece",
    "air_and_moisture",
    "answers_for",
    "bevel",
    "board_through_the_year",
    "bored_hole",
    "boring",
    "bottom_between_sides",
    "card_end",
    "check_installation",
    "compare",
    "crooked_square",
    "demo_text",
    "dividers_and_datum",
    "dividers_opened",
    "edge_in_section",
    "edges",
    "edit",
    "ellipse",
    "facing",
    "four_posts",
    "grain_in_the_tenon",
    "grain_strength",
    "hands_in_plan",
    "live_rocker",
    "look",
    "mitre_through_the_year",
    "movement_figures",
    "ornament",
    "ornament_step_by_step",
    "ornamented_panel",
    "own_ornament",
    "panel_corner",
    "panel_through_the_year",
    "pins_and_string",
    "planing_direction",
    "planter_corner",
    "plate_scale",
    "post_joint",
    "post_net",
    "post_section",
    "regular_mitre",
    "ring_section",
    "rocker_choice",
    "rocker_for_a_wish",
    "rocking",
    "rocking_measured",
    "row_of_holes",
    "running_marks",
    "running_marks_compared",
    "scaling",
    "scaling_table",
    "season_derivations",
    "setting_out",
    "sheet_at_true_size",
    "sloped_edge",
    "splay",
    "splayed_corner",
    "splayed_end",
    "square_to_round",
    "story_stick",
    "strength_figures",
    "struck_bevel",
    "tenon_fibres",
    "timber",
    "trial_holes",
    "turned_top",
    "turning",
    "two_sizes",
    "whole_piece",
    "wood_in_the_air",
    "wood_movement",
]
