"""Texts from a file or standard input: UTF-8, at most 1,000,000 bytes, refused with the place of the first fault."""

from __future__ import annotations

import codecs
import sys
from dataclasses import dataclass
from pathlib import Path

from counterpane.cli.endings import Missing, Unreadable

MOST_BYTES = 1_000_000  # A text of this many bytes is read, one more is refused.
_WIDE = (codecs.BOM_UTF32_LE, codecs.BOM_UTF32_BE, codecs.BOM_UTF16_LE, codecs.BOM_UTF16_BE)


@dataclass(frozen=True, slots=True)
class Given:
    """A text as it was given: its name for messages, and whether a byte order mark stood before it."""

    name: str
    text: str
    marked: bool = False


def read_text(where: str) -> Given:
    """Read a file, or standard input for `-`; Missing where there is none, Unreadable where it is no text."""
    name = "standard input" if where == "-" else where
    raw = _bytes(where)
    if len(raw) > MOST_BYTES:
        raise Unreadable(f"{name}: more than {MOST_BYTES:,} bytes", "Split the text and give the parts one by one.")
    marked = raw.startswith(codecs.BOM_UTF8)
    return Given(name, _decoded(raw.removeprefix(codecs.BOM_UTF8), name), marked)


def _bytes(where: str) -> bytes:
    if where == "-":
        return sys.stdin.buffer.read(MOST_BYTES + 1)
    try:
        with Path(where).open("rb") as file:
            return file.read(MOST_BYTES + 1)
    except FileNotFoundError:
        raise Missing(f"{where}: there is no such file", "Check the name, or use - for standard input.") from None
    except IsADirectoryError:
        raise Unreadable(f"{where}: is a folder, not a file", "Name one file in it.") from None
    except ValueError:
        raise Unreadable("a file name cannot hold a NUL character", "Check the name.") from None
    except OSError as fault:
        why = (fault.strerror or str(fault)).lower()
        raise Unreadable(f"{where}: cannot be read: {why}", "Check its permissions.") from None


def _decoded(raw: bytes, name: str) -> str:
    try:
        return raw.decode("utf-8")
    except UnicodeDecodeError as fault:
        before = raw[: fault.start].decode("utf-8").replace("\r\n", "\n").replace("\r", "\n")
        line, column = before.count("\n") + 1, len(before) - (before.rfind("\n") + 1) + 1
        odd = f"the byte 0x{raw[fault.start]:02x} does not fit"
        kind = "it looks like UTF-16 or UTF-32" if raw.startswith(_WIDE) else odd
        hint = "Save the text as UTF-8 and give it again."
        raise Unreadable(f"{name}, line {line}, column {column}: not UTF-8 text; {kind}", hint) from None
