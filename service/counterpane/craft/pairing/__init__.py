"""What two parts of a blanket do to each other: whether their counts meet, and what the eye and the hand say.

Facts are worked out once for each part; a pair costs arithmetic alone. The rules of whole plans ask the same questions.
"""

from counterpane.craft.pairing.counting import Fit, Join, meet
from counterpane.craft.pairing.facts import Facts, Place, facts_of
from counterpane.craft.pairing.lines import Lines, lines_of
from counterpane.craft.pairing.plans import Pair, ends_of, pairs_of
from counterpane.craft.pairing.remarks import Remark, remarks

__all__ = [
    "Facts",
    "Fit",
    "Join",
    "Lines",
    "Pair",
    "Place",
    "Remark",
    "ends_of",
    "facts_of",
    "lines_of",
    "meet",
    "pairs_of",
    "remarks",
]
