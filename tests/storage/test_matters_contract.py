"""What every store must do with submissions and safety reports."""

from __future__ import annotations

from dataclasses import replace
from typing import Any

import pytest

from counterpane.library.errors import Moved, NotFound, Taken
from counterpane.library.keeping import audit
from counterpane.library.ports import Done, Once, Store
from counterpane.library.review.matters import Decision, Matter, Place, Sought

AT = "2026-01-02T03:04:05Z"


def matter(slug: str, **changes: Any) -> Matter:
    """Return a submission of this slug."""
    made = Matter("review", "component", slug, "a" * 64, AT, "Odile", "us", AT, b"{}")
    return replace(made, **changes)


def numbers(store: Store, limit: int = 50, **sought: Any) -> list[int]:
    """Return the numbers of the whole queue, over pages of this size."""
    found: list[int] = []
    after: Place | None = None
    while True:
        page = store.queue(Sought(after=after, limit=limit, **sought))
        found += [each.number for each in page.matters]
        if (after := page.last) is None:
            return found


@pytest.mark.parametrize("limit", [1, 2, 50])
def test_the_queue_is_in_order_over_all_pages(store: Store, limit: int) -> None:
    """Reports first, then what waits for us, the oldest first; what is closed only where it is asked for."""
    later = "2026-01-03T03:04:05Z"
    for each in (
        matter("moss", since=later),
        matter("garter", turn="contributor"),
        matter("waffle"),
        matter("moss", lane="safety", since=later),
        matter("rib", turn="nobody"),
    ):
        store.put_matter(each)
    assert numbers(store, limit) == [4, 3, 1, 2]
    assert numbers(store, limit, slug="moss") == [4, 1]
    assert numbers(store, limit, turn="nobody") == [5]
    assert numbers(store, limit, lane="review", turn="us") == [3, 1]


def test_of_a_slug_one_submission_is_open(store: Store) -> None:
    """Reports and closed ones do not count."""
    number = store.put_matter(matter("moss"))
    with pytest.raises(Taken):
        store.put_matter(matter("moss"))
    store.put_matter(matter("moss", lane="safety"))
    store.turn_matter(replace(store.matter(number), turn="nobody"), None)
    assert store.put_matter(matter("moss")) == 3


def test_of_two_who_decide_at_once_one_is_told(store: Store) -> None:
    """The second decision is neither kept nor logged."""
    number = store.put_matter(matter("moss"))
    before = store.matter(number)
    decision = Decision(AT, "Suri", "ask", "wording-unclear", "Which row?")
    store.turn_matter(replace(before, turn="contributor"), decision)
    with pytest.raises(Moved):
        store.turn_matter(replace(before, turn="nobody"), replace(decision, decision="refuse"))
    (kept,) = store.decisions(number)
    assert (kept.decision, store.names()[kept.by], store.matter(number).version) == ("ask", "Suri", 2)
    assert [line.act for line in store.audit(0, 10)] == ["submit", "decide"]
    assert audit.verify(store).wrong == ""


def test_what_is_not_there_is_not_found(store: Store) -> None:
    """A number names nothing until it is given."""
    with pytest.raises(NotFound):
        store.matter(1)
    with pytest.raises(NotFound):
        store.turn_matter(matter("moss", number=1), None)


def test_a_matter_is_kept_once_under_a_key(store: Store) -> None:
    """Its number is given again, nothing is logged twice, and a turn has a key of its own."""
    once, turned = (Once(key, "sent", AT, "2026-01-01T00:00:00Z") for key in ("one", "two"))
    number = store.put_matter(matter("moss"), once=once)
    done = Done("component", "moss", "a" * 64, "sent", 1)
    assert (number, store.put_matter(matter("rib"), once=once), store.done(once)) == (1, done, done)
    after = replace(store.matter(1), turn="nobody")
    decision = Decision(AT, "Suri", "refuse", "no-answer", "Nothing came.")
    assert store.turn_matter(after, decision, once=turned) is None
    assert store.turn_matter(after, decision, once=turned) == done
    assert [line.act for line in store.audit(0, 10)] == ["submit", "decide"]


def test_a_matter_that_is_refused_keeps_no_key(store: Store) -> None:
    """It may be sent again."""
    store.put_matter(matter("moss"))
    once = Once("one", "sent", AT, "2026-01-01T00:00:00Z")
    with pytest.raises(Taken):
        store.put_matter(matter("moss"), once=once)
    assert store.done(once) is None
