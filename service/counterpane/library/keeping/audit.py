"""The audit log: lines of which each holds the hash of the one before, so that none can be changed unseen.

The hash of a line is the SHA-256 of its canonical JSON (RFC 8785) without the hash itself. A log that was cut short at
its end holds by itself; the last hash, noted down elsewhere, shows that too.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import asdict, dataclass
from typing import Any

from counterpane.library.keeping.objects import canonical, digest
from counterpane.library.keeping.record import Act, Line
from counterpane.library.ports import Store

START = "0" * 64
"""What stands for the hash of a line before the first one."""
READ_AT_ONCE = 1000
"""Lines that are read from the store at a time; house."""


@dataclass(frozen=True, slots=True)
class Verdict:
    """How many lines hold, the hash of the last of them, and what is wrong with the line after it; "" for nothing.

    `seen` says whether the hash that was looked for is among them, None where none was.
    """

    lines: int
    last: str
    wrong: str = ""
    seen: bool | None = None


def next_line(act: Act, person: str, before: Line | None) -> Line:
    """Return the line that an act adds after another one; `person` is the key of who did it."""
    seq, previous = (before.seq + 1, before.sha256) if before else (1, START)
    members = (seq, act.at, person, act.act, act.subject, dict(act.detail), previous)
    return Line(*members, digest(canonical(_hashed(Line(*members, "")))))


def _hashed(line: Line) -> dict[str, Any]:
    return {name: value for name, value in asdict(line).items() if name != "sha256"}


def lines(store: Store) -> Iterator[Line]:
    """Give all lines, oldest first."""
    after = 0
    while found := store.audit(after, READ_AT_ONCE):
        yield from found
        after = found[-1].seq


def verify(store: Store, noted: str | None = None) -> Verdict:
    """Work out every line again and return the verdict; `noted` is a hash that must be among them."""
    count, last, seen = 0, START, None if noted is None else noted == START
    for line in lines(store):
        if wrong := wrong_in(line, count + 1, last):
            return Verdict(count, last, wrong, seen)
        count, last = count + 1, line.sha256
        seen = seen if noted is None else seen or last == noted
    return Verdict(count, last, "", seen)


def wrong_in(line: Line, seq: int, previous: str) -> str:
    """Return what is wrong with a line, "" where it holds."""
    if line.seq != seq:
        return f"Line {seq} is missing: line {line.seq} follows."
    if line.previous != previous:
        return f"Line {seq} does not follow from the line before it."
    if digest(canonical(_hashed(line))) != line.sha256:
        return f"Line {seq} does not have the hash that it says."
    return ""


def line_json(line: Line, names: Mapping[str, str]) -> dict[str, Any]:
    """Return a line as JSON values, with the name of who did it where it is kept."""
    return {**asdict(line), "name": names.get(line.by)}
