"""What is left to do after the bind-off, by the fibres of the yarn. Common practice, no source."""

from __future__ import annotations

from collections.abc import Iterator
from fractions import Fraction

from counterpane.craft.care.finishing import Aftercare, Finish
from counterpane.craft.constructions import Plan
from counterpane.craft.measures import shown
from counterpane.craft.pattern.figures import both, cm, span_in_inches
from counterpane.craft.pattern.terms import in_terms
from counterpane.craft.stitches import Terms

WOVEN = "5 to 6 cm (2 to 2½ in)"
"""How far an end is woven in, each way. Common practice, no source."""


def finishing(plan: Plan, terms: Terms, after: Aftercare | None = None) -> tuple[str, ...]:
    """Say what is left to do after the bind-off, in order; without `after` nothing is known of the fibres."""
    steps = (
        f"Weave in every end for {WOVEN} one way and then back the other, and trim it close; leave no loop.",
        *_wet(plan, after),
        "Measure it again when it is dry and write down what it came to.",
        "Count the markers, pins and needles that were used, and feel both sides with the hand for what is left in it.",
    )
    return tuple(in_terms(step, terms) for step in steps)


def _wet(plan: Plan, after: Aftercare | None) -> Iterator[str]:
    """Say how the piece is washed, laid out and dried."""
    size = f"{both(plan.width_cm)} wide and {both(plan.length_cm)} long"
    if after is None or not after.finish.ways:
        yield f"Wash the blanket as the swatch was washed, lay it flat to {size}, and let it dry."
        yield "The fibres of the yarn are not known: no steam and no iron unless its label allows them."
        return
    finish = after.finish
    yield f"Wash the blanket as the swatch was washed and its label allows{_minding(finish)}."
    yield "Press the water out in a towel, without wringing, and carry the whole weight from below."
    yield _laid(plan, finish)
    yield "These sizes are common practice: what the swatch did when it was washed counts for more."
    yield _steam(after)
    yield from (way.says for way in finish.ways)
    yield from _tumble(after)
    if finish.superwash_unknown:
        yield "Whether the wool is superwash is not known: look on the ball band, and treat it as if it were not."
    if finish.unknown:
        yield "Not all fibres of the yarn are known: what is said here is the gentlest of all."


def _minding(finish: Finish) -> str:
    return f": {', '.join(finish.soaks)}" if finish.soaks else ""


def _laid(plan: Plan, finish: Finish) -> str:
    (narrow, wide), (short, long) = finish.laid(plan.width_cm, plan.length_cm)
    sizes = f"{_span(narrow, wide)} wide and {_span(short, long)} long"
    if finish.pins:
        return f"Pin it out flat to {sizes}, with pins close enough that the edges stay straight, and let it dry."
    return f"Lay it flat to {sizes}, patted and not pulled, without pins, and let it dry."


def _span(least: Fraction, most: Fraction) -> str:
    if least == most:
        return both(least)
    return f"{shown(least)} to {cm(most)} ({span_in_inches(least, most)})"


def _steam(after: Aftercare) -> str:
    if not after.finish.steam:
        return "No steam and no iron: something in this yarn does not bear them."
    if after.steam is False:
        return "No steam: its label does not allow it."
    if after.steam:
        return "Steam is held above the fabric and never touches it."
    return "Steam, if its label allows it, is held above the fabric and never touches it."


def _tumble(after: Aftercare) -> Iterator[str]:
    if after.tumble is not False and not after.finish.unknown:
        allowed = "" if after.tumble else ", if its label allows one"
        yield from (f"{way.tumble}{allowed}." for way in after.finish.ways if way.tumble)
