"""What to do for who is past the place of a change. The sentences are our own; what is worked decides which is said."""

from __future__ import annotations

from counterpane.craft.erratum import Line

READ_FIRST = "Read it before you go on, and before the blanket is used if it is finished."
NOTHING_TO_RIP = "Nothing to rip: read this instead."
LEFT_OUT = "Nothing to rip: this is left out."
COMPARE = "Nothing to rip: compare it with what you have."
BOUND_OFF = "If you have bound off, undo the bind-off and work it again."
_BOUND_FOR_LOOKS = "Otherwise the edge is worked by the old text."
_LEFT = (
    "Or leave it: every count is the same by both texts. The rows already worked keep the look of the old text, and a "
    "line can be seen where the texts meet"
)
_LEFT_LONGER = "Or leave it: every count is the same by both texts. This part is then as long as the old text makes it"
_OF_SAFETY = "Do not leave it as it is: this is a correction of safety."
_COUNTS = "It cannot be left: what follows would not come out."


def advice(line: Line, past: int | None, *, may_stay: bool, for_safety: bool, left_out: bool = False) -> str:
    """Say what to do about a changed line for who has worked more than `past` rows of its piece."""
    if line.sort == "caution":
        return READ_FIRST
    if past is None and left_out:
        return LEFT_OUT
    if past is None:
        return COMPARE if line.place.section == "Materials" else NOTHING_TO_RIP
    if line.sort == "bind-off":
        return f"{BOUND_OFF} {_OF_SAFETY if for_safety else _BOUND_FOR_LOOKS}"
    return f"{_ripping(line, past)} {_leaving(line, may_stay=may_stay, for_safety=for_safety)}"


def _ripping(line: Line, past: int) -> str:
    where = f"{line.piece[:1].lower()}{line.piece[1:]}" or "blanket"
    if line.sort == "cast-on":
        return f"If you have begun the {where}: rip it out and begin again."
    if past == 0:
        return f"If you are past the beginning of the {where}: rip back to its first edge, before row 1."
    return f"If you are past row {past} of the {where}: rip back to the end of row {past}."


def _leaving(line: Line, *, may_stay: bool, for_safety: bool) -> str:
    if for_safety:
        return _OF_SAFETY
    if not may_stay:
        return _COUNTS
    if line.sort == "cast-on":
        return "Or leave it: the count is the same, and only the first edge looks otherwise."
    return f"{_LEFT_LONGER if line.sort == 'repeat' else _LEFT}."
