"""House figures: this project's own judgement where no body publishes one, kept together for the owner to sign.

The sheet to sign is `seeds/facts/house-safety.toml`; a test holds each figure here to the one that stands there.
"""

from __future__ import annotations

from collections.abc import Mapping
from fractions import Fraction

LOOSE_NOTICE_MM = Fraction(10)
"""House, R15, R17: a loose strand or end longer than this is named; about the depth of a fingertip joint."""

COARSE_STS_10CM = Fraction(12)
"""House, R45: at this gauge and coarser, half a plain loop drawn round a rod passes 5 mm."""

NOT_LIGHT_GSM = Fraction(500)
"""House, R07: from this mass per square metre a blanket is not called lightweight."""

HEAVY_GSM = Fraction(800)
"""House, R07: from this mass per square metre that is a warning."""

REACH_UNDER_12_MONTHS_CM = Fraction(50)
"""House, R10: about what lies between the foot of the bed and the shoulders of a young baby."""

REACH_FROM_12_MONTHS_CM = Fraction(70)
"""House, R10: the same at a year."""

CORDS_TOGETHER_MM = Fraction(380)
"""House, R23: cords that together pass the borrowed limit of one loop; adding them up is the house's."""

MELTING_SHARE_PCT = Fraction(50)
"""House, R32: from this share of fibres that melt the blanket is said to melt."""

FIGURES: Mapping[str, Fraction] = {
    "loose-thread-named": LOOSE_NOTICE_MM,
    "coarse-gauge": COARSE_STS_10CM,
    "not-lightweight": NOT_LIGHT_GSM,
    "heavy-blanket": HEAVY_GSM,
    "reach-under-12-months": REACH_UNDER_12_MONTHS_CM,
    "reach-from-12-months": REACH_FROM_12_MONTHS_CM,
    "cords-together": CORDS_TOGETHER_MM,
    "melting-share": MELTING_SHARE_PCT,
}
"""Every house figure by the name of its fact."""

JUDGEMENTS: Mapping[str, str] = {
    "no-upper-end-of-openings": "R12, R13",
    "stop-lace-whatever-the-use": "R12",
    "no-tufts-under-three": "R25",
    "no-shed-fibre-near-a-newborn": "R29",
    "fringe-is-cord": "R24",
    "last-look-before-giving": "R44",
    "no-mothballs": "R47",
    "ask-the-ward": "R48",
    "part-untold-by-its-size": "R26",
    "figures-of-chemistry": "R36",
}
"""What the house decided without a figure, by the name of its fact, and the rules that follow it."""
