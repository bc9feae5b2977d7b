"""Dumps: the same bytes for the same library, and nothing restored from a file that was cut or changed."""

from __future__ import annotations

import hashlib
import io
import json
from collections.abc import Callable
from pathlib import Path

import pytest
from hypothesis import given
from hypothesis import strategies as st

from counterpane import wiring
from counterpane.library.errors import BrokenDump, Taken
from counterpane.library.keeping import audit
from counterpane.library.ports import CountClass, Store, TextureKey
from counterpane.library.sharing.dumps import dump, restore, verify
from counterpane.storage.memory import MemoryStore
from counterpane.storage.sqlite import SqliteStore
from storage.entries import entry

WRITES = st.lists(
    st.tuples(
        st.sampled_from(["component", "recipe", "profile", "edition"]),
        st.sampled_from(["moss", "waffle", "rib", "garter"]),
        st.text(st.characters(exclude_categories=["Cs"], exclude_characters='"\\', min_codepoint=32), max_size=9),
        st.lists(st.builds(CountClass, st.integers(0, 9), st.integers(0, 9), st.integers(0, 9)), max_size=2),
        st.none() | st.integers(0, 10_000),
    ),
    max_size=12,
)


def written(store: Store, writes: list[tuple]) -> Store:
    """Return the store after these writes: the first of a slug adds it, the others revise it."""
    for shelf, slug, text, classes, opening_um in writes:
        textures = (TextureKey(0, text or "none", "k"),) if shelf == "component" else ()
        made = entry(slug, text, shelf=shelf, classes=tuple(classes), textures=textures, opening_um=opening_um)
        try:
            store.add(made)
        except Taken:
            store.revise(made, None)
    return store


def dumped(store: Store) -> bytes:
    """Return the whole dump of a store."""
    return b"".join(dump(store))


@pytest.fixture(scope="module")
def sample() -> bytes:
    """Return the dump of a store with a revision, two shelves and all that is looked up."""
    writes = [("component", "moss", "one", [CountClass(2, 1, 3)], 7), ("recipe", "frost", "two", [], None)]
    return dumped(written(MemoryStore(), [*writes, ("component", "moss", "three", [], 9)]))


@given(WRITES)
def test_what_is_restored_dumps_the_same_bytes(writes: list[tuple]) -> None:
    """Whatever was written, and in whatever order."""
    whole = dumped(written(MemoryStore(), writes))
    made = MemoryStore()
    manifest = restore(made, io.BytesIO(whole))
    assert dumped(made) == whole
    assert manifest.records == len(whole.splitlines()) - 2


def test_both_stores_dump_the_same_bytes(tmp_path: Path, sample: bytes) -> None:
    """A dump does not tell which store it is of."""
    store = SqliteStore(tmp_path / "library.db")
    restore(store, io.BytesIO(sample))
    assert dumped(store) == sample
    store.close()


def test_the_starters_come_back_as_they_were(tmp_path: Path) -> None:
    """A whole library: each answer of the restored one is that of the first."""
    first, store = wiring.open_library(), SqliteStore(tmp_path / "library.db")
    whole = dumped(first.store)
    restore(store, io.BytesIO(whole))
    assert dumped(store) == whole
    assert store.latest("component", "waffle").body == first.store.latest("component", "waffle").body
    assert audit.verify(store) == audit.verify(first.store)
    store.close()


def test_the_manifest_says_what_stands_before_it(sample: bytes) -> None:
    """Its bytes and their hash can be worked out by any other program."""
    *lines, last = sample.splitlines(keepends=True)
    before = b"".join(lines)
    said = {"format": 1, "records": 18, "bytes": len(before), "sha256": hashlib.sha256(before).hexdigest()}
    assert json.loads(last) == {"manifest": said}


def test_each_byte_that_is_changed_is_found_on_its_line(sample: bytes) -> None:
    """No bit of the file can be flipped unseen; the line is named, and nothing is written."""
    line, store = 1, MemoryStore()
    nothing = list(store.records())
    for place, byte in enumerate(sample):
        with pytest.raises(BrokenDump) as caught:
            restore(store, io.BytesIO(sample[:place] + bytes([byte ^ 1]) + sample[place + 1 :]))
        assert caught.value.line - line in (0, 1) if byte == 10 or byte ^ 1 == 10 else caught.value.line == line
        line += byte == 10
    assert list(store.records()) == nothing and [each.sort for each in nothing] == ["library"]


def test_a_file_that_is_cut_anywhere_is_refused(sample: bytes) -> None:
    """At the line where it ends."""
    for place in range(len(sample)):
        with pytest.raises(BrokenDump) as caught:
            verify(io.BytesIO(sample[:place]))
        assert caught.value.line == sample[:place].count(b"\n") + 1


@pytest.mark.parametrize(
    ("change", "line"),
    [
        (lambda lines: [*lines[:3], *lines[4:]], 4),
        (lambda lines: [*lines[:3], lines[4], lines[3], *lines[5:]], 4),
        (lambda lines: [*lines[:5], lines[4], *lines[5:]], 6),
        (lambda lines: [*lines, lines[-1]], 21),
        (lambda lines: [*lines[:-2], lines[-1]], 19),
        (lambda lines: [b'{"dump":"counterpane","format":2}\n', *lines[1:]], 1),
    ],
)
def test_lines_that_are_missing_moved_or_doubled_are_named(
    sample: bytes, change: Callable[[list[bytes]], list[bytes]], line: int
) -> None:
    """The first line that is not where it should be."""
    with pytest.raises(BrokenDump, match=f"^line {line}: ") as caught:
        verify(io.BytesIO(b"".join(change(sample.splitlines(keepends=True)))))
    assert caught.value.line == line


def forged(sample: bytes, old: bytes, new: bytes) -> io.BytesIO:
    """Return a dump in which something was replaced and each sum worked out again."""
    last, lines = "", []
    head, *records, _ = sample.replace(old, new).splitlines(keepends=True)
    for each in records:
        rest = each[74:]
        last = hashlib.sha256(last.encode() + rest).hexdigest()
        lines.append(b'{"sum":"' + last.encode() + b'",' + rest)
    before = b"".join([head, *lines])
    said = {"format": 1, "records": len(lines), "bytes": len(before), "sha256": hashlib.sha256(before).hexdigest()}
    return io.BytesIO(before + json.dumps({"manifest": said}, separators=(",", ":")).encode() + b"\n")


@pytest.mark.parametrize(
    ("old", "new", "said"),
    [
        (b'\\"text\\":\\"one\\"', b'\\"text\\":\\"two\\"', "is that of"),
        (b'"change","row":{"seq":2', b'"change","row":{"seq":3', "has not the number 2"),
        (b'"act":"revise"', b'"act":"erased"', "does not have the hash"),
        (b'"item":1,"number":2', b'"item":1,"number":3', "follows no other"),
        (b'"id":1,"number":2', b'"id":1,"number":1', "does not lead to its latest"),
        (b'"um":9', b'"um":"9"', "right type"),
        (b'"sort":"opening"', b'"sort":"token"', "no record that this version knows"),
    ],
)
def test_a_dump_whose_sums_are_right_must_still_make_a_library(
    sample: bytes, old: bytes, new: bytes, said: str
) -> None:
    """Objects are those of their hashes, and chains and numbers have no gaps."""
    assert old in sample
    with pytest.raises(BrokenDump, match=said):
        verify(forged(sample, old, new))


def test_a_library_that_holds_something_is_not_written_over(sample: bytes) -> None:
    """It stays as it was."""
    store = MemoryStore()
    store.add(entry("garter"))
    before = dumped(store)
    with pytest.raises(Taken):
        restore(store, io.BytesIO(sample))
    assert dumped(store) == before
