"""Where sources contradict each other: both statements as they stand, resolved by nobody here."""

from __future__ import annotations

from collections.abc import Collection
from dataclasses import dataclass
from typing import Any


@dataclass(frozen=True, slots=True)
class Statement:
    """What one side says, in our own words, with its source."""

    who: str
    says: str
    source: str


@dataclass(frozen=True, slots=True)
class Conflict:
    """Two or more statements that do not go together, the rules that they touch, and how the rules treat them."""

    reference: str
    about: str
    rules: tuple[str, ...]
    statements: tuple[Statement, ...]
    treated: str


CONFLICTS: tuple[Conflict, ...] = (
    Conflict(
        "K1",
        "a blanket in the sleep space of a baby under 12 months",
        ("R01", "R09", "R10"),
        (
            Statement("United States", "none at all", "AAP, Pediatrics 150(1):e2022057990, 2022"),
            Statement(
                "United Kingdom, Australia, Canada, Netherlands",
                "a light blanket is tolerated; where it is tucked in, firmly so",
                "NHS, Red Nose Australia and Consumentenbond, pages read in 2026; Health Canada, 2017, second-hand",
            ),
        ),
        "Both are printed, the stricter first.",
    ),
    Conflict(
        "K2",
        "openings in the fabric",
        ("R11", "R12", "R13", "R14"),
        (
            Statement(
                "Scotland",
                "cellular cotton blankets let heat out",
                "Safe Sleep Scotland, page on tucking in, read in 2026",
            ),
            Statement(
                "European guidance and neonatal units",
                "openings of the size of a finger trap fingers and toes",
                "CEN/TR 13387:2004 by way of ANEC, 2012, second-hand; a neonatal unit in Oxford, relayed",
            ),
        ),
        "Openings are never counted in a blanket's favour; stitches under 5 mm, stretched, offend neither.",
    ),
    Conflict(
        "K3",
        "the fibre of a blanket for a preterm baby",
        ("R14", "R29", "R34", "R48"),
        (
            Statement("a neonatal charity in New Zealand", "only wool", "second-hand, 2026"),
            Statement(
                "a unit in Oxford",
                "washes at 60 °C and tumble dries, and is given acrylic and nylon",
                "charity of the hospital, relayed, 2026",
            ),
            Statement(
                "a unit in Medway",
                "fibres of a wool blanket cut into two toes of a preterm infant",
                "Verma, Hashem and Ramadan, EC Paediatrics 8.8, 2019, 693-695",
            ),
        ),
        "The unit is asked, and its list counts for it alone.",
    ),
    Conflict(
        "K4",
        "the age from which a filled cover may be used for sleep",
        ("R05",),
        (
            Statement(
                "United Kingdom", "from 12 months", "NHS and The Lullaby Trust, repeated by local pages, second-hand"
            ),
            Statement("Netherlands", "from 24 months", "Consumentenbond, page read in 2026"),
            Statement("European standard", "its scope runs to 36 months", "EN 16779-1:2018, scope read"),
        ),
        "Each country's age counts for its own advice.",
    ),
    Conflict(
        "K5",
        "whether a light blanket is a cool one",
        ("R07", "R46"),
        (
            Statement(
                "health bodies in several countries",
                "only lightweight blankets",
                "The Lullaby Trust, 2024, and Health Canada, 2017, second-hand; Red Nose Australia, read in 2026",
            ),
            Statement(
                "Netherlands",
                "warmth follows thickness and trapped air, not weight",
                "Consumentenbond, page read in 2026; VeiligheidNL and TNO, second-hand",
            ),
            Statement(
                "research",
                "too little insulation is a risk as well",
                "Williams et al., Int J Epidemiol 25:366, 1996, abstract",
            ),
        ),
        "The rule on mass says that a blanket is not lightweight, and nothing of warmth.",
    ),
    Conflict(
        "K6",
        "whether loose yarn counts as a part that comes off",
        ("R15", "R17", "R24", "R25", "R26"),
        (
            Statement(
                "the small-parts rule of the United States",
                "yarn, fuzz and string do not count",
                "16 CFR 1501.4(b)(2), read",
            ),
            Statement(
                "medical reports",
                "threads and hairs cut off the blood of fingers and toes",
                "Barton, Sloan and Nichter, Pediatrics 82:925, 1988; Pediatr Dermatol 40:125, 2023",
            ),
        ),
        "The small-parts rule switches off no rule on yarn.",
    ),
)
"""In the order of the notes that they come from, read in November 2026."""


def conflicts_json(concerned: Collection[str]) -> list[dict[str, Any]]:
    """Return the conflicts that touch any of these rules, as JSON values."""
    return [_told(conflict) for conflict in CONFLICTS if set(conflict.rules) & set(concerned)]


def _told(conflict: Conflict) -> dict[str, Any]:
    return {
        "reference": conflict.reference,
        "about": conflict.about,
        "rules": list(conflict.rules),
        "statements": [{"who": each.who, "says": each.says, "source": each.source} for each in conflict.statements],
        "treated": conflict.treated,
    }
