"""What a page imports, in one line: the piece, the topics, the views, and the three things that a page does."""

from woodmath import bevel, boring, ellipse, leaning, post_joint
from woodmath.comparison import compare
from woodmath.exercises import answers_for
from woodmath.explorer import look
from woodmath.piece import Piece
from woodmath.piece_file import demo_text
from woodmath.self_check import check_installation
from woodmath.sheet import sheet_at_true_size
from woodmath.views.bevel import struck_bevel
from woodmath.views.boring import bored_hole
from woodmath.views.ellipse import pins_and_string
from woodmath.views.hole_rows import row_of_holes
from woodmath.views.piece import whole_piece
from woodmath.views.post_joint import post_section
from woodmath.views.trial_holes import trial_holes

__all__ = [
    "Piece",
    "answers_for",
    "bevel",
    "bored_hole",
    "boring",
    "check_installation",
    "compare",
    "demo_text",
    "ellipse",
    "leaning",
    "look",
    "pins_and_string",
    "post_joint",
    "post_section",
    "row_of_holes",
    "sheet_at_true_size",
    "struck_bevel",
    "trial_holes",
    "whole_piece",
]
