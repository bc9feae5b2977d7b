"""The states of a revision, and the one table of the moves between them: from where, to where, and by whom.

A move out of quarantine leads back to the state before it, or to one that is stricter. Nothing leads out of withdrawn.
"""

from __future__ import annotations

from dataclasses import dataclass
from typing import Literal

from counterpane.library.errors import Moved, NotTheirs
from counterpane.library.keeping.record import Standing, Status
from counterpane.library.ports import ROLES, Role

Who = Literal["owner", "reviewer", "keeper"]


@dataclass(frozen=True, slots=True)
class Rung:
    """A move that is allowed: `who` is the owner of the slug, or a role that reaches; a role need not own it.

    A reviewed one is made by handing in and by decisions, and in no other way.
    """

    before: Status
    after: Status
    who: tuple[Who, ...]
    reviewed: bool = False


LADDER: tuple[Rung, ...] = (
    Rung("draft", "in-review", ("owner",), reviewed=True),
    Rung("draft", "accepted", ("keeper",)),
    Rung("draft", "quarantined", ("reviewer",)),
    Rung("draft", "withdrawn", ("owner", "keeper")),
    Rung("in-review", "draft", ("reviewer",), reviewed=True),
    Rung("in-review", "accepted", ("reviewer",), reviewed=True),
    Rung("in-review", "quarantined", ("reviewer",)),
    Rung("accepted", "deprecated", ("owner", "reviewer")),
    Rung("accepted", "yanked", ("owner", "reviewer")),
    Rung("accepted", "quarantined", ("reviewer",)),
    Rung("accepted", "withdrawn", ("keeper",)),
    Rung("deprecated", "accepted", ("reviewer",)),
    Rung("deprecated", "yanked", ("owner", "reviewer")),
    Rung("deprecated", "quarantined", ("reviewer",)),
    Rung("deprecated", "withdrawn", ("keeper",)),
    Rung("yanked", "accepted", ("keeper",)),
    Rung("yanked", "quarantined", ("reviewer",)),
    Rung("yanked", "withdrawn", ("keeper",)),
    Rung("mirrored", "accepted", ("keeper",)),
    Rung("mirrored", "quarantined", ("reviewer",)),
    Rung("mirrored", "withdrawn", ("keeper",)),
    Rung("quarantined", "mirrored", ("reviewer",)),
    Rung("quarantined", "draft", ("reviewer",)),
    Rung("quarantined", "accepted", ("reviewer",)),
    Rung("quarantined", "deprecated", ("reviewer",)),
    Rung("quarantined", "yanked", ("reviewer",)),
    Rung("quarantined", "withdrawn", ("keeper",)),
)
STRICT: tuple[Status, ...] = ("yanked", "withdrawn")
"""States to which a quarantine may lead whatever was before it."""


def require_unreviewed(before: str, after: str) -> None:
    """Raise Moved for a move that only a submission or a decision makes."""
    if any(rung.reviewed and (rung.before, rung.after) == (before, after) for rung in LADDER):
        hint = "Hand it in with POST /v1/submissions, or decide there."
        raise Moved(f"A revision that is {before} becomes {after} by review.", hint)


def require_move(before: str, after: str, role: Role, *, own: bool, last: Standing | None) -> None:
    """Raise Moved for a move that is not in the table, and NotTheirs for one that this person may not make."""
    found = next((rung for rung in LADDER if (rung.before, rung.after) == (before, after)), None)
    back = last.before if last and before == "quarantined" else after
    if found is None or (back not in (after, "in-review") and after not in STRICT):
        ways = [rung.after for rung in LADDER if rung.before == before and back in (after, rung.after)]
        there = f"From {before} it goes to {' or '.join(ways)}." if ways else f"Nothing leads out of {before}."
        raise Moved(f"A revision that is {before} does not become {after}.", there)
    reached = any(who != "owner" and ROLES.index(role) >= ROLES.index(who) for who in found.who)
    if not (reached or (own and "owner" in found.who)):
        allowed = " or ".join("who added it" if who == "owner" else f"a {who}" for who in found.who)
        raise NotTheirs(f"From {before} to {after} it is moved by {allowed}.")
