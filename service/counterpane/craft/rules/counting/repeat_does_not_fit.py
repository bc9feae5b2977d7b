"""A repeat that does not divide the stitches it has."""

from __future__ import annotations

from collections.abc import Iterator

from counterpane.craft.checking import Examined, jammed
from counterpane.craft.checking.wording import either, stitches
from counterpane.craft.counts import Misfit
from counterpane.craft.findings import Finding, rule


@rule(
    "repeat-does-not-fit",
    family="counting",
    severity="error",
    bad="Cast on 22 sts.\nRow 1: K2, *p3, k3; rep from * to last 3 sts, k3.",
    good="Cast on 22 sts.\nRow 1: K1, *p3, k3; rep from * to last 3 sts, k3.",
)
def repeat_does_not_fit(examined: Examined) -> Iterator[Finding]:
    """A repeat does not fit.

    A repeat must come out even over the stitches it is given. The nearest counts that fit are named.
    """
    return jammed(examined, "repeat-does-not-fit", _say)


def _say(name: str, misfit: Misfit) -> tuple[str, str]:
    """Word the misfit of a repeat with the nearest counts."""
    match misfit:
        case Misfit(has=int(has), multiple=int(multiple)) if multiple:
            message = f"{name} begins with {stitches(has)}, over which the repeat of {multiple} does not come out even."
            near = either((misfit.below, misfit.above))
            return message, f"Begin the row with {near}, or change the stitches outside the repeat."
        case Misfit(has=int(has), asked=int(repeat), left=int(room)):
            return _between_markers(name, has, repeat, room)
    return f"{name}: the repeat does not come out even, whatever the cast-on.", "Change the stop or the repeat."


def _between_markers(name: str, has: int, repeat: int, room: int) -> tuple[str, str]:
    """Word the misfit of a repeat that has only some stitches of its row."""
    fewer = room - room % repeat
    near = either((fewer or None, fewer + repeat))
    return (
        f"{name} begins with {stitches(has)}; its repeat of {repeat} has {room} of them and does not come out even.",
        f"Give the repeat {near}: change the cast-on, a marker, or the stitches beside it.",
    )
