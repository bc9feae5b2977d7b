"""Rows of a repeat line that do not return to their start."""

from __future__ import annotations

from collections.abc import Iterator

from counterpane.craft.checking import Examined, Repeated, pointing, trouble
from counterpane.craft.checking.wording import at, stitches
from counterpane.craft.counts import passes_from
from counterpane.craft.findings import Finding, Severity, rule


@rule(
    "count-drifts",
    family="counting",
    severity="error",
    bad="Cast on 10 sts.\nRow 1: K1, ssk, *k2, p2; rep from * to last 3 sts, k2tog, k1.\nRep row 1.",
    good="Cast on 10 sts.\nRow 1: K1, ssk, yo, *k2, p2; rep from * to last 3 sts, yo, k2tog, k1.\nRep row 1.",
)
def count_drifts(examined: Examined) -> Iterator[Finding]:
    """The rows of a repeat line do not return to their start.

    Rows that are worked again must leave a count that they can begin with. Where the first pass leaves another, the
    second pass fails, unless the change is meant and fits.
    """
    stuck = trouble(examined) is not None
    for repeated in examined.walk.repeated:
        drift, again = repeated.chain.drift, repeated.step.again
        untold = again.remain is not None and repeated.reached is None
        if drift == 0 or not repeated.chain.starts or repeated.reached or untold:
            continue
        change = "change the count" if drift is None else f"{'add' if drift > 0 else 'lose'} {stitches(abs(drift))}"
        if repeated.reached is False:
            message = f"Each pass of these rows would {change}; {stitches(again.remain or 0)} are never reached."
            hint = "Change the number to stop at, or the rows."
        elif (same := _comes_back_to(repeated)) is not None:
            message = f"These rows come back to {stitches(same)}, but not to every count they begin with."
            hint = "Say that they are for this count alone, or make them return to any count."
        else:
            message = f"These rows {change} in one pass{_until(repeated)}."
            hint = "Make the rows return to their first count, or say how often they are worked."
        grave = repeated.reached is False or (again.passes is None and not _fits_once_more(repeated))
        severity: Severity = ("warning" if stuck else "error") if grave else "note"
        hint = pointing(examined, again.place.line, hint) if grave and not stuck else hint
        yield at(again.place, "count-drifts", severity, message, hint)


def _fits_once_more(repeated: Repeated) -> bool:
    """Tell whether a second pass can be worked, whatever becomes of a third, and whatever of other counts."""
    return repeated.fits_again or _more(repeated) != 0


def _comes_back_to(repeated: Repeated) -> int | None:
    """Return the count that the rows begin with and leave again, None where they leave another."""
    before, chain = repeated.before, repeated.chain
    return before if before is not None and chain.admits(before) and chain.after(before) == before else None


def _more(repeated: Repeated) -> int | None:
    """Return how often the rows can surely be worked on from where they stand; None for as often as wanted."""
    return 0 if repeated.before is None else passes_from(repeated.chain, repeated.before)


def _until(repeated: Repeated) -> str:
    """Say how long the rows can be worked on from where they stand."""
    more = None if repeated.fits_again else _more(repeated)
    if more is None:
        return ", each time"
    if repeated.before is None:
        return " and do not take every count that they leave"
    if more == 0:
        return ", so that they cannot be worked again"
    return f", so that they can be worked {'once' if more == 1 else f'{more} times'} more and then not again"
