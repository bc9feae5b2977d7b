"""What every store must do with a peer's history, and with records of all that is kept, asked of each in turn."""

from __future__ import annotations

from collections.abc import Iterator
from pathlib import Path

import pytest

from counterpane.library.errors import Stale, Taken
from counterpane.library.keeping.record import Move
from counterpane.library.ports import CountClass, Holder, Store, TextureKey
from counterpane.library.sharing.following import Apart, Retold, Seen, Step
from counterpane.library.sharing.records import Record
from counterpane.storage.memory import MemoryStore
from counterpane.storage.sqlite import SqliteStore
from storage.entries import ANY, entry, slugs


def furnished(store: Store) -> None:
    """Put some of everything into a store: several shelves, revisions, classes, textures, openings and a token."""
    textures = (TextureKey(0, "plain", "k"), TextureKey(1, "ribbed", "kp"))
    store.add(entry("moss", classes=(CountClass(6, 2, 8), CountClass(0, 8, 8)), textures=textures, opening_um=4_999))
    store.add(entry("ward", shelf="profile", kind="profile", classes=(), reversible=None))
    store.revise(entry("moss", "second", by="Zoë", classes=(CountClass(2, 0, 2, 12), ANY)), None)
    store.add(entry("a-body", "größer — 2\u2028lines"))
    other = entry("moss", "other")
    noted = Apart("peer", "component", "moss", other.sha256, "2026-01-02T00:00:00Z", "other content")
    store.follow(Step(Seen("peer", 1, "a"), 0, apart=noted, content=other.content))
    store.put_token(Holder("a" * 64, "keeper", "anna", "2026-01-02T03:04:05Z"))


class TestFollowing:
    """A peer's history is followed step by step, each with what becomes of it in one transaction."""

    def test_a_step_moves_the_place_with_its_write(self, store: Store) -> None:
        """The first revision, the next one, where that stands, and a line that changes nothing."""
        first, second = entry("moss"), entry("moss", "second")
        assert store.seen("peer") is None
        store.follow(Step(Seen("peer", 1, "a"), 0, first))
        store.follow(Step(Seen("peer", 2, "b"), 1, second, first.sha256))
        move = Move("component", "moss", second.sha256, "draft", "yanked", second.at, "peer", "told-by-peer", "Wrong.")
        store.follow(Step(Seen("peer", 3, "c"), 2, move=move, retell=lambda body: body + b" "))
        store.follow(Step(Seen("peer", 4, "d"), 3))
        assert store.seen("peer") == Seen("peer", 4, "d")
        assert (store.latest("component", "moss").status, store.history("component", "moss")[0].status) == (
            "yanked",
            "draft",
        )
        assert [(each.sha256, each.event) for each in store.changes(0, 9)] == [
            (first.sha256, "added"),
            (second.sha256, "revised"),
            (second.sha256, "yanked"),
        ]

    def test_a_step_that_fails_moves_nothing(self, store: Store) -> None:
        """Neither the place nor the library."""
        store.add(entry("moss"))
        before = list(store.records())
        for step in (
            Step(Seen("peer", 1, "a"), 0, entry("moss", "other")),
            Step(Seen("peer", 1, "a"), 0, entry("moss", "other"), "0" * 64),
            Step(Seen("peer", 2, "a"), 1, entry("rib")),
        ):
            with pytest.raises((Taken, Stale)):
                store.follow(step)
        assert list(store.records()) == before

    def test_what_is_kept_apart_can_be_had_and_changes_no_chain(self, store: Store) -> None:
        """Its bytes are an object; the latest revision stays, with what is told of it put anew."""
        own, other = entry("moss"), entry("moss", "other")
        store.add(own, entry("rib"))
        noted = Apart("peer", "component", "moss", other.sha256, "2026-01-02T00:00:00Z", "other content")
        told = Retold("component", "moss", own.sha256, b"{}", 9_000)
        store.follow(Step(Seen("peer", 1, "a"), 0, apart=noted, content=other.content, retold=told))
        assert (store.apart(), store.apart("component", "moss"), store.apart("recipe", "moss")) == ((noted,),) * 2 + (
            (),
        )
        assert store.object(other.sha256) == other.content
        kept = store.latest("component", "moss")
        assert (kept.sha256, kept.number, kept.body) == (own.sha256, 1, b"{}")
        assert store.revision("component", "moss", own.sha256).body == b"{}"
        assert (slugs(store, openings_under_mm=9), slugs(store, openings_under_mm=10)) == ([], ["moss"])
        assert len(store.changes(0, 9)) == 2


class TestRecords:
    """All that a store holds, as records, makes the same store again."""

    @pytest.mark.parametrize("other", ["memory", "sqlite"])
    def test_a_store_of_the_records_of_another_holds_the_same(self, store: Store, tmp_path: Path, other: str) -> None:
        """Each kind of store takes the records of each, and answers as the other does."""
        furnished(store)
        held = list(store.records())
        made: Store = MemoryStore() if other == "memory" else SqliteStore(tmp_path / "other.db")
        made.restore(held)
        assert list(made.records()) == held
        assert made.history("component", "moss") == store.history("component", "moss")
        assert made.changes(0, 10) == store.changes(0, 10)
        for wanted in ({}, {"admits": 10}, {"words": ("second",)}, {"openings_under_mm": 6}, {"texture": "ribbed"}):
            assert slugs(made, **wanted) == slugs(store, **wanted)
        made.close()

    def test_records_hold_no_token(self, store: Store) -> None:
        """Neither its hash nor for whom it is."""
        furnished(store)
        assert not [each for each in store.records() if "a" * 64 in each.row.values() or each.sort == "token"]

    def test_a_restored_store_goes_on(self, store: Store) -> None:
        """The next revision and the next change have the next numbers."""
        furnished(store)
        made = MemoryStore()
        made.restore(store.records())
        made.revise(entry("moss", "third"), entry("moss", "second").sha256)
        assert (made.latest("component", "moss").number, made.changes(4, 9)[0].seq) == (3, 5)

    def test_what_holds_something_is_not_filled(self, store: Store) -> None:
        """It stays as it was."""
        store.add(entry("garter"))
        held = list(store.records())
        with pytest.raises(Taken):
            store.restore(held)
        assert list(store.records()) == held

    def test_records_that_break_off_leave_nothing(self, store: Store) -> None:
        """All or none; the store keeps the name that it had."""
        other, nothing = MemoryStore(), list(store.records())
        furnished(other)

        def broken() -> Iterator[Record]:
            yield from list(other.records())[:-1]
            raise RuntimeError("broken off")

        with pytest.raises(RuntimeError):
            store.restore(broken())
        assert list(store.records()) == nothing and [each.sort for each in nothing] == ["library"]
