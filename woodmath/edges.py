"""The edge of a panel: rebate, then bead, then tenon, and the groove in which the tongue stands.

Each subject has a module of its own; here they stand together, as a page wants them.
"""

from __future__ import annotations

from woodmath.bead import (
    Bead,
    aslant_derivation,
    begin_derivation,
    hollow_shown,
    radius_derivation,
    reach_derivation,
    tenon_may_begin,
)
from woodmath.edge_derivations import (
    floor_derivation,
    groove_derivation,
    inner_face_derivation,
    panel_derivation,
    play_derivation,
    rebate_derivation,
    share_derivation,
    taps_derivation,
)
from woodmath.groove import TWO_TAPS, ChiselStep, Groove, passes
from woodmath.rebate import FACES, INNER_FACE, OUTER_FACE, Rebate, panel_set_back
from woodmath.tongue_in_groove import BOTTOMS, GOES_HOME, TOO_THICK, VERDICTS, TongueInGroove

__all__ = [
    "BOTTOMS",
    "FACES",
    "GOES_HOME",
    "INNER_FACE",
    "OUTER_FACE",
    "TOO_THICK",
    "TWO_TAPS",
    "VERDICTS",
    "Bead",
    "ChiselStep",
    "Groove",
    "Rebate",
    "TongueInGroove",
    "aslant_derivation",
    "begin_derivation",
    "floor_derivation",
    "groove_derivation",
    "hollow_shown",
    "inner_face_derivation",
    "panel_derivation",
    "panel_set_back",
    "passes",
    "play_derivation",
    "radius_derivation",
    "reach_derivation",
    "rebate_derivation",
    "share_derivation",
    "taps_derivation",
    "tenon_may_begin",
]
