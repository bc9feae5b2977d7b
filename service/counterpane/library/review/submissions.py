"""Submissions and safety reports: handing in, the queue, and decisions, none of them without a reason for people."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from contextlib import suppress
from dataclasses import asdict, dataclass, replace
from datetime import datetime
from typing import Any

import orjson

from counterpane.library.errors import Moved, NotFound, NotTheirs
from counterpane.library.keeping.objects import json_bytes
from counterpane.library.keeping.once import only_once
from counterpane.library.keeping.record import Move
from counterpane.library.ports import ROLES, Done, Holder, Once, Shelf
from counterpane.library.review import ladder, reasons, standing
from counterpane.library.review.matters import Decision, Lane, Matter, Place, Sought, Turn
from counterpane.library.review.submission_checks import checks_of
from counterpane.library.services import Services
from counterpane.library.values import BadInput

Content = Mapping[str, Any]
SHELVES: tuple[Shelf, ...] = ("component", "recipe")
DECISIONS: Mapping[Lane, Mapping[str, Turn]] = {
    "review": {"accept": "nobody", "ask": "contributor", "refuse": "nobody"},
    "safety": {"uphold": "nobody", "dismiss": "nobody"},
}
"""What may be decided in each lane, and whose turn it then is."""
STATES = {"accept": "accepted", "ask": "draft", "refuse": "draft"}
"""Where a decision leaves the revision that was submitted."""
_TIME = "%Y-%m-%dT%H:%M:%SZ"


@dataclass(frozen=True, slots=True)
class Found:
    """A page of the queue as JSON values, and the place after which the next one begins."""

    items: tuple[dict[str, Any], ...]
    last: Place | None


def submit(services: Services, content: Content, holder: Holder) -> dict[str, Any]:
    """Hand in the latest revision of what the holder added; it is checked at once, and the checks are kept.

    Where something was asked for, it goes on as the same submission. Raise NotFound, Moved, NotTheirs and Taken.
    """
    return submit_once(services, content, holder, None)[0]


def submit_once(services: Services, content: Content, holder: Holder, once: Once | None) -> tuple[dict[str, Any], bool]:
    """Hand in, or tell of what was handed in under this key, as it is by then; say whether it was before.

    Raise what `submit` raises, and KeyReused.
    """
    number, done = only_once(services.store, once, lambda: _submit(services, content, holder, once))
    return told_of(services, number), done is not None


def _submit(services: Services, content: Content, holder: Holder, once: Once | None) -> int | Done:
    shelf, slug = _about(content)
    kept, now = services.store.latest(shelf, slug), services.now()
    last = services.store.standing(shelf, slug, kept.sha256)
    own = standing.owns(services, shelf, slug, holder)
    ladder.require_move(kept.status, "in-review", holder.role, own=own, last=last)
    note = (content.get("say") or "").strip()
    told = {"say": note, "checks": checks_of(services, shelf, kept)}
    words = (now, holder.name, "submitted", note or "Handed in to be read.")
    move = Move(shelf, slug, kept.sha256, kept.status, "in-review", *words)
    matter = Matter("review", shelf, slug, kept.sha256, now, holder.name, "us", now, json_bytes(told))
    waiting = services.store.queue(Sought("review", "contributor", slug)).matters
    if again := next((each for each in waiting if each.shelf == shelf), None):
        number = again.number
        matter = replace(matter, at=again.at, number=number, version=again.version)
        return services.store.turn_matter(matter, None, move, standing.retelling(move), once) or number
    return services.store.put_matter(matter, move, standing.retelling(move), once)


def report(services: Services, content: Content, holder: Holder) -> dict[str, Any]:
    """Report that something may hurt a baby; raise NotFound and BadInput."""
    return report_once(services, content, holder, None)[0]


def report_once(services: Services, content: Content, holder: Holder, once: Once | None) -> tuple[dict[str, Any], bool]:
    """Report, or tell of what was reported under this key; say whether it was before.

    Raise what `report` raises, and KeyReused.
    """
    number, done = only_once(services.store, once, lambda: _report(services, content, holder, once))
    return told_of(services, number), done is not None


def _report(services: Services, content: Content, holder: Holder, once: Once | None) -> int | Done:
    shelf, slug = _about(content)
    sha256 = content.get("revision") or services.store.latest(shelf, slug).sha256
    services.store.revision(shelf, slug, sha256)
    if not content["say"].strip():
        raise BadInput("/say", "Nothing is said.", "Say what happened, or what may happen.")
    now, body = services.now(), json_bytes({"say": content["say"].strip(), "checks": None})
    matter = Matter("safety", shelf, slug, sha256, now, holder.name, "us", now, body)
    return services.store.put_matter(matter, once=once)


def _about(content: Content) -> tuple[Shelf, str]:
    shelf = next(each for each in SHELVES if content.get(each))
    return shelf, str(content[shelf])


def decide(services: Services, number: int, content: Content, holder: Holder) -> dict[str, Any]:
    """Decide about a matter that waits for us, with a code and a sentence.

    Raise NotFound, BadInput, NotTheirs for who submitted or added it, and Moved where it does not wait for us.
    """
    return decide_once(services, number, content, holder, None)[0]


def decide_once(
    services: Services, number: int, content: Content, holder: Holder, once: Once | None
) -> tuple[dict[str, Any], bool]:
    """Decide, or tell of what was decided under this key; say whether it was before.

    Raise what `decide` raises, and KeyReused.
    """
    _, done = only_once(services.store, once, lambda: _decide(services, number, content, holder, once))
    return told_of(services, number), done is not None


def _decide(services: Services, number: int, content: Content, holder: Holder, once: Once | None) -> Done | None:
    matter = services.store.matter(number)
    ways = DECISIONS[matter.lane]
    if content["decision"] not in ways:
        message = f"Nothing in the lane {matter.lane!r} is decided with {content['decision']!r}."
        raise BadInput("/decision", message, f"Use one of: {', '.join(ways)}.")
    reasons.refuse_unfit(content["because"], content["say"], content["decision"])
    _refuse_own(services, matter, holder)
    if matter.turn != "us":
        raise Moved(f"Submission {number} waits for {matter.turn}.", "Only what waits for us is decided.")
    decision = Decision(services.now(), holder.name, content["decision"], content["because"], content["say"].strip())
    after = replace(matter, turn=ways[decision.decision], since=decision.at)
    move = _move(services, matter, decision) if matter.lane == "review" else None
    return services.store.turn_matter(after, decision, move, standing.retelling(move) if move else None, once)


def _refuse_own(services: Services, matter: Matter, holder: Holder) -> None:
    names = services.store.names()
    people = {names.get(matter.by), names.get(services.store.author(matter.shelf, matter.slug))}
    if ROLES.index(holder.role) < ROLES.index("reviewer") or holder.name in people:
        raise NotTheirs("Nobody decides about what they added or submitted.", "Ask another reviewer.")


def _move(services: Services, matter: Matter, decision: Decision) -> Move | None:
    """Return the move that a decision brings; None where another revision came, or it stands elsewhere, meanwhile."""
    kept = services.store.revision(matter.shelf, matter.slug, matter.sha256)
    if kept.status != "in-review":
        if decision.decision == "accept":
            raise Moved(f"The revision is {kept.status} by now.", "Ask for a change, or refuse it.")
        return None
    to, because = STATES[decision.decision], decision.because if decision.decision == "accept" else "sent-back"
    words = (decision.at, decision.by, because, decision.said)
    return Move(matter.shelf, matter.slug, matter.sha256, kept.status, to, *words)


def page(services: Services, filters: Content, after: Place | None, limit: int) -> Found:
    """Return a page of the queue: reports first, then what waits for us, the oldest first."""
    found = services.store.queue(Sought(**filters, after=after, limit=limit))
    names, now = services.store.names(), services.now()
    return Found(tuple(_card(each, names, now) for each in found.matters), found.last)


def everything(services: Services, **filters: Any) -> Iterator[dict[str, Any]]:
    """Give the whole queue."""
    after, more = None, True
    while more:
        found = page(services, filters, after, 50)
        yield from found.items
        after, more = found.last, found.last is not None


def open_of(services: Services, slug: str) -> Matter:
    """Return the first matter of a slug that waits for us; raise Moved for none, and NotFound for no such slug."""
    for each in services.store.queue(Sought(turn="us", slug=slug)).matters:
        return each
    if not any(_is_kept(services, shelf, slug) for shelf in SHELVES):
        raise NotFound(f"There is no component or recipe {slug!r}.", "`counterpane queue` lists what waits.")
    raise Moved(f"Nothing of {slug!r} waits for us.", "`counterpane queue` lists what does.")


def _is_kept(services: Services, shelf: Shelf, slug: str) -> bool:
    with suppress(NotFound):
        return bool(services.store.author(shelf, slug))
    return False


def told_of(services: Services, number: int) -> dict[str, Any]:
    """Return a matter whole: what was handed in, the checks, and all decisions; raise NotFound."""
    matter, names = services.store.matter(number), services.store.names()
    decided = [
        {**asdict(each), "by": standing.person_json(each.by, names)} for each in services.store.decisions(number)
    ]
    body: dict[str, Any] = orjson.loads(matter.body)
    return _card(matter, names, services.now()) | body | {"decisions": decided}


def _card(matter: Matter, names: Mapping[str, str], now: str) -> dict[str, Any]:
    plain = ("number", "lane", "slug", "sha256", "at", "turn", "since")
    waited = datetime.strptime(now, _TIME) - datetime.strptime(matter.since, _TIME)
    return {
        **{name: getattr(matter, name) for name in plain},
        "about": matter.shelf,
        "by": standing.person_json(matter.by, names),
        "waiting_days": None if matter.turn == "nobody" else max(0, waited.days),
        "href": f"/v1/submissions/{matter.number}",
    }
