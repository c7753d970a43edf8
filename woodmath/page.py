"""What a page imports, in one line: the piece, the topics, the views, and the three things that a page does."""

from woodmath import (
    bevel,
    boring,
    edges,
    ellipse,
    plate_scale,
    post_joint,
    regular_mitre,
    rocker_choice,
    rocking,
    rocking_measured,
    running_marks,
    scaling,
    setting_out,
    splay,
    splayed_corner,
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
from woodmath.views.bevel import struck_bevel
from woodmath.views.boring import bored_hole
from woodmath.views.card_end import card_end
from woodmath.views.dividers import dividers_opened
from woodmath.views.edges import edge_in_section
from woodmath.views.edges_corner import panel_corner
from woodmath.views.ellipse import pins_and_string
from woodmath.views.hole_rows import row_of_holes
from woodmath.views.level_bottom import bottom_between_sides
from woodmath.views.live_rocker import live_rocker
from woodmath.views.piece import whole_piece
from woodmath.views.post_joint import post_section
from woodmath.views.rocker_for_a_wish import rocker_for_a_wish
from woodmath.views.running_marks import running_marks_compared
from woodmath.views.setting_out import four_posts
from woodmath.views.setting_out_dividers import dividers_and_datum
from woodmath.views.setting_out_hands import hands_in_plan
from woodmath.views.setting_out_net import post_net
from woodmath.views.setting_out_stick import story_stick
from woodmath.views.splayed_corner import planter_corner
from woodmath.views.splayed_panel import splayed_end
from woodmath.views.trial_holes import trial_holes
from woodmath.views.two_sizes import two_sizes

__all__ = [
    "Piece",
    "answers_for",
    "bevel",
    "bored_hole",
    "boring",
    "bottom_between_sides",
    "card_end",
    "check_installation",
    "compare",
    "demo_text",
    "dividers_and_datum",
    "dividers_opened",
    "edge_in_section",
    "edges",
    "edit",
    "ellipse",
    "four_posts",
    "hands_in_plan",
    "live_rocker",
    "look",
    "panel_corner",
    "pins_and_string",
    "planter_corner",
    "plate_scale",
    "post_joint",
    "post_net",
    "post_section",
    "regular_mitre",
    "rocker_choice",
    "rocker_for_a_wish",
    "rocking",
    "rocking_measured",
    "row_of_holes",
    "running_marks",
    "running_marks_compared",
    "scaling",
    "scaling_table",
    "setting_out",
    "sheet_at_true_size",
    "splay",
    "splayed_corner",
    "splayed_end",
    "story_stick",
    "struck_bevel",
    "trial_holes",
    "two_sizes",
    "whole_piece",
]
