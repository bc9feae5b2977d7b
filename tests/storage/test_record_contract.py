"""What every store must do with where revisions stand, with people, and with the audit log."""

from __future__ import annotations

import sqlite3
from dataclasses import replace
from pathlib import Path

import pytest
from sqlite_utils import Database

from counterpane.library.errors import Gone, Moved, NotFound, Taken
from counterpane.library.keeping import audit
from counterpane.library.keeping.record import Act, Move
from counterpane.library.ports import Done, Holder, Once, Store, Wanted
from counterpane.storage.sqlite import SqliteStore
from counterpane.storage.sqlite.connections import connect
from counterpane.storage.sqlite.migrations import steps
from storage.entries import entry

AT = "2026-01-02T03:04:05Z"


def moving(before: str, after: str, text: str = "first") -> Move:
    """Return a move of the revision of "garter" that has this text."""
    sha256 = entry("garter", text).sha256
    return Move("component", "garter", sha256, before, after, AT, "Suri", "misprint", "It is wrong.")


def retell(told: bytes) -> bytes:
    """Mark what is told, so that it is seen to be told again."""
    return told + b" "


def test_a_move_reaches_each_place_of_a_revision(store: Store) -> None:
    """A content that came twice in the chain stands in one way, and another one as it stood."""
    store.add(entry("garter"))
    for text in ("second", "first"):
        store.revise(entry("garter", text), None)
    store.move(moving("draft", "yanked"), retell)
    assert [kept.status for kept in store.history("component", "garter")] == ["yanked", "draft", "yanked"]
    assert store.latest("component", "garter").body == entry("garter").body + b" "
    assert store.page(Wanted("component", status="yanked")).cards == (entry("garter").card + b" ",)


def test_a_move_is_made_once_under_a_key(store: Store) -> None:
    """Sent again it is given back, though the revision stands elsewhere by then; a refused one keeps no key."""
    store.add(entry("garter"))
    move, once = moving("draft", "yanked"), Once("one", "sent", AT, "2026-01-01T00:00:00Z")
    done = Done("component", "garter", move.sha256, "sent")
    assert (store.move(move, retell, once), store.move(move, retell, once), store.done(once)) == (None, done, done)
    assert len(store.standings("component", "garter")) == 1
    with pytest.raises(Moved):
        store.move(move, retell, other := replace(once, key="two"))
    assert store.done(other) is None


def test_a_move_from_where_it_no_longer_stands_is_refused(store: Store) -> None:
    """Of two who move at once, the second is told, and nothing of it is kept."""
    store.add(entry("garter"))
    store.move(moving("draft", "yanked"), retell)
    with pytest.raises(Moved):
        store.move(moving("draft", "accepted"), retell)
    with pytest.raises(NotFound):
        store.move(moving("draft", "accepted", "never"), retell)
    assert [each.status for each in store.standings("component", "garter")] == ["yanked"]
    assert len(store.audit(0, 10)) == len(store.changes(0, 10)) == 2


def test_what_is_withdrawn_is_gone_and_its_slug_is_taken(store: Store) -> None:
    """No list and no hash has it, and the changes keep its tombstone."""
    store.add(entry("garter"))
    store.move(moving("draft", "withdrawn"), retell)
    sha256 = entry("garter").sha256
    for ask in (lambda: store.latest("component", "garter"), lambda: store.object(sha256)):
        with pytest.raises(Gone, match="It is wrong"):
            ask()
    with pytest.raises(Gone):
        store.revision("component", "garter", sha256)
    with pytest.raises(Taken):
        store.add(entry("garter", "another"))
    found = [store.page(Wanted("component", **more)).cards for more in ({}, {"admits": 9}, {"words": ("garter",)})]  # type: ignore[arg-type]
    assert found == [(), (), ()]
    assert store.changes(0, 10)[-1].event == "withdrawn"


def test_a_chain_tells_who_and_what_was_before(store: Store) -> None:
    """Each revision has the hash of the one before and the key of its maker."""
    store.add(entry("garter"))
    store.revise(entry("garter", "second", by="berta"), None)
    first, second = store.history("component", "garter")
    assert (first.parent, second.parent) == (None, first.sha256)
    assert [store.names()[kept.by] for kept in (first, second)] == ["anna", "berta"]
    assert store.author("component", "garter") == store.person("anna") == first.by


def test_every_write_has_its_line_and_the_log_holds(store: Store) -> None:
    """Adding, revising, moving and a token are told, each line with the hash of the one before."""
    store.add(entry("garter"))
    store.revise(entry("garter", "second"), None)
    store.move(moving("draft", "yanked", "second"), retell)
    store.put_token(Holder("a" * 64, "keeper", "Suri", AT))
    lines = store.audit(0, 10)
    assert [line.act for line in lines] == ["add", "revise", "move", "token"]
    assert [line.previous for line in lines] == [audit.START, *(line.sha256 for line in lines[:3])]
    assert audit.verify(store) == audit.Verdict(4, lines[-1].sha256)
    assert store.audit(2, 1) == lines[2:3]


def test_a_name_is_erased_and_its_tokens_with_it(store: Store) -> None:
    """The key stays in the log, which holds, and names nobody."""
    store.put_token(Holder("a" * 64, "keeper", "Suri", AT, "2026-12-31"))
    assert store.token("a" * 64).until == "2026-12-31"
    key = store.person("Suri")
    store.erase(key, Act(AT, "Bram", "erase", f"person/{key}"))
    for ask in (lambda: store.person("Suri"), lambda: store.token("a" * 64)):
        with pytest.raises(NotFound):
            ask()
    assert (store.audit(0, 1)[0].by, audit.verify(store).wrong) == (key, "")


class TestTheFile:
    """What only the file can promise."""

    @pytest.mark.parametrize("statement", ["UPDATE audit SET act = 'x'", "DELETE FROM audit"])
    def test_a_line_of_the_log_can_be_neither_changed_nor_taken_out(self, tmp_path: Path, statement: str) -> None:
        """The database itself refuses."""
        store = SqliteStore(tmp_path / "library.db")
        store.add(entry("garter"))
        store.close()
        with sqlite3.connect(tmp_path / "library.db") as db, pytest.raises(sqlite3.IntegrityError, match="of the log"):
            db.execute(statement)
        db.close()

    @pytest.mark.parametrize(
        ("statement", "wrong"),
        [
            ("UPDATE audit SET act = 'x' WHERE seq = 2", "Line 2 does not have the hash"),
            ("DELETE FROM audit WHERE seq = 2", "Line 2 is missing"),
            ("UPDATE audit SET previous = sha256 WHERE seq = 2", "Line 2 does not follow"),
        ],
    )
    def test_the_first_line_that_does_not_hold_is_named(self, tmp_path: Path, statement: str, wrong: str) -> None:
        """Whoever takes the triggers away is found out."""
        store = SqliteStore(tmp_path / "library.db")
        store.add(*(entry(slug) for slug in ("garter", "moss", "waffle")))
        with sqlite3.connect(tmp_path / "library.db") as db:
            for trigger in ("audit_stands", "audit_stays"):
                db.execute(f"DROP TRIGGER {trigger}")
            db.execute(statement)
        db.close()
        verdict = audit.verify(store)
        store.close()
        assert verdict.lines == 1
        assert verdict.wrong.startswith(wrong)

    def test_names_that_an_earlier_file_kept_get_keys(self, tmp_path: Path) -> None:
        """The step that brings people in turns each name into a key, and loses none."""
        given = entry("garter")
        db = Database(connect(tmp_path / "library.db", read_only=False))
        steps.apply(db, stop_before="0007_record")
        told = {name: getattr(given, name) for name in ("sha256", "body", "at", "status")}
        also = {name: getattr(given, name) for name in ("shelf", "slug", "kind", "card", "title", "words")}
        db.table("object").insert({"sha256": given.sha256, "content": given.content})
        db.table("item").insert({"id": 1, "number": 1, **told, **also})
        db.table("revision").insert({"item": 1, "number": 1, "by": "anna", **told})
        db.table("token").insert({"sha256": "a" * 64, "role": "keeper", "name": "anna", "at": AT})
        db.conn.close()
        store = SqliteStore(tmp_path / "library.db")
        assert store.token("a" * 64) == Holder("a" * 64, "keeper", "anna", AT)
        assert store.names()[store.author("component", "garter")] == "anna"
        store.close()
