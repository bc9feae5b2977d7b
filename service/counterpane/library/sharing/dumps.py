"""Dumps: all that a library keeps as lines of JSON (NDJSON) with a manifest, and a library made of one.

The first line says what the file is, the last one is the manifest: how many records, how many bytes before it, and
their SHA-256. Each record stands on a line of its own as `{"sum":…,"sort":…,"row":…}`. The sum is the SHA-256 of the
sum before it (the first has none) and of the line's bytes behind the sum, so that the first line that was changed,
moved or left out is known by its number.

What was derived from a content is restored as it was kept, by whichever version did it. A dump is for one's own
library; what comes from others is proved again: that is `pulling`.
"""

from __future__ import annotations

import hashlib
from collections.abc import Iterable, Iterator
from dataclasses import asdict, dataclass
from typing import IO, Any

import orjson

from counterpane.library.errors import BrokenDump
from counterpane.library.ports import Store
from counterpane.library.sharing.record_proof import proved
from counterpane.library.sharing.records import FORM_OF, Record

FORMAT = 1
HEAD = {"dump": "counterpane", "format": FORMAT}
MOST_LINE = 64 * 2**20
"""House: the longest line that is read, 64 MiB."""

_SUM = b'{"sum":"'
_BEHIND = len(_SUM) + 64 + len(b'",')


@dataclass(frozen=True, slots=True)
class Manifest:
    """How many records a dump holds, the bytes before the manifest, and their SHA-256."""

    format: int
    records: int
    bytes: int
    sha256: str


def dump(store: Store) -> Iterator[bytes]:
    """Give the lines of a dump, the same for the same library whichever store holds it."""
    return _dump(store.records())


def proved_dump(records: Iterable[Record]) -> Manifest:
    """Return the manifest of the dump of these records, all of which hold; raise BrokenDump."""
    *_, last = _dump(proved(enumerate(records, 2)))
    return _manifest(last)


def _dump(records: Iterable[Record]) -> Iterator[bytes]:
    whole, size, count = hashlib.sha256(), 0, 0
    for line in _lines(records):
        whole.update(line)
        size, count = size + len(line), count + 1
        yield line
    manifest = Manifest(FORMAT, count - 1, size, whole.hexdigest())
    yield orjson.dumps({"manifest": asdict(manifest)}) + b"\n"


def _lines(records: Iterable[Record]) -> Iterator[bytes]:
    last = ""
    yield orjson.dumps(HEAD) + b"\n"
    for record in records:
        fields = {name: record.row[name] for name in FORM_OF[record.sort].fields}
        rest = orjson.dumps({"sort": record.sort, "row": fields})[1:] + b"\n"
        last = _sum(last, rest)
        yield _SUM + last.encode() + b'",' + rest


def _sum(last: str, rest: bytes) -> str:
    return hashlib.sha256(last.encode() + rest).hexdigest()


def restore(store: Store, file: IO[bytes]) -> Manifest:
    """Fill a store that holds nothing with a dump, all of it or nothing.

    The whole file is looked at before anything is written. Raise BrokenDump with the number of the line, and Taken
    where the store holds something.
    """
    manifest = verify(file)
    file.seek(0)
    store.restore(proved(_read(file)))
    return manifest


def verify(file: IO[bytes]) -> Manifest:
    """Read a dump to its end and return its manifest; raise BrokenDump with the number of the first bad line."""
    for _ in proved(_read(file)):
        pass
    file.seek(0)
    *_, last = file
    return _manifest(last)


def _manifest(line: bytes) -> Manifest:
    return Manifest(**orjson.loads(line)["manifest"])


def _read(file: IO[bytes]) -> Iterator[tuple[int, Record]]:
    """Give each record with the number of its line; raise BrokenDump."""
    whole, size, last, number = hashlib.sha256(), 0, "", 1
    line = _line(file, number)
    if _json(line, number) != HEAD:
        message = f"This is no dump of format {FORMAT}."
        raise BrokenDump(number, message)
    while True:
        whole.update(line)
        size, number = size + len(line), number + 1
        line = _line(file, number)
        if not line.startswith(_SUM):
            break
        last = _followed(line, last, number)
        yield number, _record(_json(line, number), number)
    _close(line, number, Manifest(FORMAT, number - 2, size, whole.hexdigest()))
    if file.read(1):
        raise BrokenDump(number + 1, "Something stands behind the manifest.")


def _line(file: IO[bytes], number: int) -> bytes:
    line = file.readline(MOST_LINE + 1)
    if not line:
        raise BrokenDump(number, "The file ends here, before its manifest.")
    if len(line) > MOST_LINE:
        raise BrokenDump(number, f"The line is longer than {MOST_LINE} bytes.")
    if not line.endswith(b"\n"):
        raise BrokenDump(number, "The file ends within the line.")
    return line


def _json(line: bytes, number: int) -> Any:
    try:
        return orjson.loads(line)
    except ValueError as fault:
        raise BrokenDump(number, "The line is no JSON; a file that `counterpane dump` made is wanted.") from fault


def _followed(line: bytes, last: str, number: int) -> str:
    """Return the sum of the line, which must follow from the sum before."""
    found = _sum(last, line[_BEHIND:])
    if line[len(_SUM) : _BEHIND] != found.encode() + b'",':
        raise BrokenDump(number, "The line was changed or moved, or one before it is missing.")
    return found


def _record(value: Any, number: int) -> Record:
    sort, row = (value.get("sort"), value.get("row")) if isinstance(value, dict) else (None, None)
    form = FORM_OF.get(sort) if isinstance(sort, str) else None
    if form is None or not isinstance(row, dict) or set(row) != set(form.fields):
        raise BrokenDump(number, "The line is no record that this version knows.")
    for name in form.fields:
        wanted = str if name in form.texts else int
        if type(row[name]) is not wanted and not (row[name] is None and name in form.open):
            raise BrokenDump(number, f"The {sort} has no {name!r} of the right type.")
    return Record(form.sort, row)


def _close(line: bytes, number: int, counted: Manifest) -> None:
    """Hold the manifest against what was counted."""
    if _json(line, number) != {"manifest": asdict(counted)}:
        raise BrokenDump(number, f"The manifest does not say what was read: {counted.records} records.")
