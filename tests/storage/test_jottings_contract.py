"""What every store must do with jottings."""

from __future__ import annotations

from dataclasses import replace
from io import BytesIO
from pathlib import Path
from typing import Any

import pytest

from counterpane.library.errors import BrokenDump, Gone, NotFound, Stale
from counterpane.library.keeping import audit
from counterpane.library.keeping.objects import digest
from counterpane.library.keeping.once import once_of
from counterpane.library.knitting.jottings import Jotting, Noted
from counterpane.library.ports import Done, Store
from counterpane.library.sharing import dumps
from counterpane.storage.memory import MemoryStore
from counterpane.storage.sqlite import SqliteStore
from storage.entries import entry

AT, LATER = "2026-01-02T03:04:05Z", "2026-01-03T03:04:05Z"


def jotting(body: bytes = b'{"grams":"410"}', **changes: Any) -> Jotting:
    """Return a test knit that Ines wrote down for Odile."""
    made = Jotting("test-knit", "fog", "a" * 64, AT, "Ines", "Odile", AT, digest(body), body)
    return replace(made, **changes)


def test_jottings_are_found_by_recipe_and_sort_page_by_page(store: Store) -> None:
    """Each page goes on after a number; those of other recipes and sorts are not in it."""
    for each in (jotting(), jotting(sort="answer"), jotting(recipe="mist"), jotting(), jotting()):
        store.put_jotting(each)
    found = store.jottings(Noted("test-knit", "fog", limit=2))
    assert [each.number for each in found] == [1, 4]
    assert [each.number for each in store.jottings(Noted("test-knit", "fog", after=4))] == [5]


def test_people_stand_in_a_jotting_by_their_keys(store: Store) -> None:
    """The names stand in rows of their own, and can be erased."""
    found = store.jotting(int(str(store.put_jotting(jotting()))))
    names = store.names()
    assert (names[found.by], names[found.whose]) == ("Ines", "Odile")


def test_a_change_needs_the_hash_of_what_it_changes(store: Store) -> None:
    """Of two who change the same one, the second is told so; who wrote it down and when stays."""
    store.put_jotting(jotting())
    before, body = store.jotting(1), b'{"grams":"412"}'
    told = jotting(body, number=1, changed=LATER, whose="Noor", by="Karel", at=LATER)
    store.turn_jotting(told, before.sha256, "Karel")
    after = store.jotting(1)
    assert (after.body, after.by, after.at, after.changed) == (body, before.by, AT, LATER)
    assert store.names()[after.whose] == "Noor"
    store.turn_jotting(replace(told, whose=""), told.sha256, "Karel")
    assert store.jotting(1).whose == after.whose
    with pytest.raises(Stale) as refused:
        store.turn_jotting(told, before.sha256, "Karel")
    assert refused.value.current == digest(body)


def test_what_is_taken_back_is_gone(store: Store) -> None:
    """Its reason is told, and it is in no list."""
    store.put_jotting(jotting())
    store.turn_jotting(jotting(b"{}", number=1, taken_back="Weighed wet."), jotting().sha256, "Ines")
    assert store.jottings(Noted("test-knit", "fog")) == ()
    with pytest.raises(Gone, match="Weighed wet"):
        store.jotting(1)
    with pytest.raises(Gone):
        store.turn_jotting(jotting(number=1), digest(b"{}"), "Ines")
    with pytest.raises(NotFound):
        store.jotting(2)
    with pytest.raises(NotFound):
        store.turn_jotting(jotting(number=2), jotting().sha256, "Ines")


def test_under_one_key_one_jotting_is_kept(store: Store) -> None:
    """Sent again, what was written the first time is told, and nothing else."""
    once = once_of("a-key", "Ines", "POST /x", b"sent", AT)
    assert store.put_jotting(jotting(), once) == 1
    assert store.put_jotting(jotting(), once) == Done("jotting", "fog", jotting().sha256, once.sent, 1)
    assert store.done(once) == Done("jotting", "fog", jotting().sha256, once.sent, 1)
    assert len(store.jottings(Noted("test-knit", "fog"))) == 1


def test_under_one_key_one_jotting_is_taken_back(store: Store) -> None:
    """Sent again, what was done the first time is told; what is left has the reason and no words."""
    store.put_jotting(jotting())
    gone = jotting(b"{}", number=1, changed=LATER, whose="", taken_back="A slip.")
    once = once_of("a-key", "Ines", "POST /x", b"sent", AT)
    with pytest.raises(NotFound):
        store.taken_back(1)
    assert store.turn_jotting(gone, jotting().sha256, "Ines", once) is None
    assert store.turn_jotting(gone, jotting().sha256, "Ines", once) == store.done(once)
    assert store.done(once) == Done("jotting", "fog", digest(b"{}"), once.sent, 1)
    left = store.taken_back(1)
    assert (left.body, left.taken_back, left.changed) == (b"{}", "A slip.", LATER)
    assert len(store.audit(0, 10)) == 2


def test_each_write_of_a_jotting_is_in_the_log(store: Store) -> None:
    """By whom it was done, what, and to which; the log holds."""
    store.put_jotting(jotting())
    store.turn_jotting(jotting(b"{}", number=1, taken_back="A slip."), jotting().sha256, "Karel")
    lines = store.audit(0, 10)
    assert [(each.act, each.subject) for each in lines] == [("note", "test-knit/1"), ("take-back", "test-knit/1")]
    assert [store.names()[each.by] for each in lines] == ["Ines", "Karel"]
    assert audit.verify(store).wrong == ""


def _filled(store: Store) -> bytes:
    store.add(entry("fog", shelf="recipe"))
    store.put_jotting(jotting())
    store.put_jotting(jotting(sort="piece", whose="Ines"))
    store.turn_jotting(jotting(b"{}", number=1, taken_back="A slip."), jotting().sha256, "Karel")
    return b"".join(dumps.dump(store))


def test_jottings_go_into_a_dump_and_out_of_it(store: Store, tmp_path: Path) -> None:
    """A library made of a dump dumps the same bytes, in either sort of store."""
    whole = _filled(store)
    assert b'"sort":"jotting"' in whole
    for other in (MemoryStore(), SqliteStore(tmp_path / "other.db")):
        dumps.restore(other, BytesIO(whole))
        assert b"".join(dumps.dump(other)) == whole
        assert other.jottings(Noted("piece", "fog")) == store.jottings(Noted("piece", "fog"))
        other.close()


def test_a_jotting_of_a_recipe_that_is_not_there_breaks_a_dump(store: Store) -> None:
    """So does one whose bytes have another hash."""
    store.put_jotting(jotting())
    with pytest.raises(BrokenDump, match="no recipe 'fog'"):
        dumps.proved_dump(store.records())
    store.add(entry("fog", shelf="recipe"))
    dumps.proved_dump(store.records())
    store.put_jotting(jotting(sha256="b" * 64))
    with pytest.raises(BrokenDump, match="not that of its hash"):
        dumps.proved_dump(store.records())
