"""A small plan built by hand, a telling, and mistakes invented for the tests."""

from __future__ import annotations

from counterpane.craft.constructions import Plan
from counterpane.craft.teaching import Slip
from counterpane.craft.teaching.hands import Hand
from counterpane.craft.teaching.script import Telling
from counterpane.craft.teaching.slips import WHENS
from craft.pattern.plans import plan, section, vocabulary

GARTER = "Row 1 (RS): knit.\nRow 2 (WS): knit."
WAFFLE = """
Row 1 (RS): k6, p1, *k2, p1; rep from * to last 6 sts, k6.
Row 2 (WS): k6, k1, *p2, k1; rep from * to last 6 sts, k6.
Row 3 (RS): k6, p1, *k2, p1; rep from * to last 6 sts, k6.
Row 4 (WS): knit."""
ALL = tuple(Slip(when, when, f"{when}.", "It leans to the left.", "Undo it.", "invented") for when in WHENS)


def little(body: str = WAFFLE, sts: int = 16, rows: int = 4) -> Plan:
    """Return a body between two garter borders of four rows."""
    return plan(
        "Waffle",
        section("bottom", "garter-border", GARTER, first_row=1, rows=4, sts=sts),
        section("body", "waffle", body, first_row=5, rows=rows, sts=sts),
        section("top", "garter-border", GARTER, first_row=5 + rows, rows=4, sts=sts),
    )


def telling(hand: Hand = "right", learners: str = "beginners") -> Telling:
    """Return a telling in US terms with the invented mistakes."""
    return Telling(vocabulary(), "us", hand, learners, ALL)  # type: ignore[arg-type]
