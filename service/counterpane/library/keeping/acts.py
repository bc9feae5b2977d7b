"""What the audit log says of each write: one place for every store, so that equal writes leave equal logs."""

from __future__ import annotations

from counterpane.library.keeping.record import Act, Move
from counterpane.library.knitting.jottings import Jotting
from counterpane.library.ports import Entry, Holder
from counterpane.library.review.matters import Decision, Matter


def wrote(entry: Entry, number: int) -> Act:
    """Return what is logged of a revision; the first of a chain is added."""
    act = "add" if number == 1 else "revise"
    return Act(entry.at, entry.by, act, f"{entry.shelf}/{entry.slug}", {"sha256": entry.sha256})


def moved(move: Move) -> Act:
    """Return what is logged of a move."""
    detail = {"sha256": move.sha256, "from": move.before, "to": move.status, "because": move.because}
    return Act(move.at, move.by, "move", f"{move.shelf}/{move.slug}", detail)


def handed_in(matter: Matter, number: int) -> Act:
    """Return what is logged of a submission or a report that was given a number."""
    act = "submit" if matter.lane == "review" else "report"
    return Act(matter.at, matter.by, act, f"submission/{number}", _about(matter))


def turned(matter: Matter, decision: Decision | None) -> Act:
    """Return what is logged of a turn: a decision, or a submission that was sent again."""
    subject = f"submission/{matter.number}"
    if decision is None:
        return Act(matter.since, matter.by, "submit", subject, _about(matter))
    told = _about(matter) | {"decision": decision.decision, "because": decision.because}
    return Act(decision.at, decision.by, "decide", subject, told)


def _about(matter: Matter) -> dict[str, str | int | None]:
    return {"about": f"{matter.shelf}/{matter.slug}", "sha256": matter.sha256}


def noted(jotting: Jotting, number: int) -> Act:
    """Return what is logged of a jotting that was given a number."""
    return Act(jotting.at, jotting.by, "note", f"{jotting.sort}/{number}", _noted(jotting))


def noted_again(jotting: Jotting, by: str) -> Act:
    """Return what is logged of a jotting that somebody changed or took back."""
    act = "take-back" if jotting.taken_back is not None else "note"
    return Act(jotting.changed, by, act, f"{jotting.sort}/{jotting.number}", _noted(jotting))


def _noted(jotting: Jotting) -> dict[str, str | int | None]:
    return {"about": f"recipe/{jotting.recipe}", "sha256": jotting.sha256}


def made_token(holder: Holder) -> Act:
    """Return what is logged of a token that was made; its hash alone is told."""
    return Act(holder.at, holder.name, "token", f"token/{holder.sha256}", {"role": holder.role, "until": holder.until})
