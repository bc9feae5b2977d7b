"""Options that several commands share, and the numbers that may be typed."""

from __future__ import annotations

import argparse
import re
from decimal import Decimal
from pathlib import Path

from counterpane.cli.documents import MOST_DIGITS
from counterpane_schema.spans import SPAN, WHOLE_SPAN, is_gauge, span_of

MOST_SLUG = 80
MOST_NAME = 200
_SLUG = re.compile(r"[a-z0-9]+(-[a-z0-9]+)*")
_DECIMAL = re.compile(r"[0-9]{1,9}(\.[0-9]+)?", re.ASCII)


def take_input(parser: argparse.ArgumentParser, what: str) -> None:
    """Add the input: a file, or - for standard input."""
    parser.add_argument("file", metavar="FILE", help=f"{what}, or - for standard input")


def take_terms(parser: argparse.ArgumentParser, unset: str) -> None:
    """Add the terminology; `unset` says what happens without it."""
    parser.add_argument("--terms", choices=("us", "uk"), help=f"US or UK knitting terms ({unset})")


def take_units(parser: argparse.ArgumentParser) -> None:
    """Add the units of lengths."""
    parser.add_argument("--units", choices=("both", "cm", "in"), default="both", help="of lengths (both if not given)")


def take_json(parser: argparse.ArgumentParser) -> None:
    """Add the choice of JSON instead of tables."""
    parser.add_argument("--json", action="store_true", help="write the answer as JSON, as the API gives it")


def take_store(parser: argparse.ArgumentParser, unset: str = "else as `counterpane settings` shows") -> None:
    """Add the library to use; `unset` says what happens without it."""
    parser.add_argument("--store", metavar="PATH", help=f"the SQLite file of a library ({unset})")


def store_there(store: str | None) -> str:
    """Return the file of a library that an option names, else the one of the settings; Missing where there is none."""
    from counterpane.cli.configuring import settings_of
    from counterpane.cli.endings import Missing

    path = str(settings_of(store=store)["store"].value)
    if "://" not in path and not Path(path).exists():
        raise Missing(f"{path}: there is no library", "Name its file with --store.")
    return path


def take_profile(parser: argparse.ArgumentParser) -> None:
    """Add the list of a ward or charity that the piece is held against."""
    known = "a list of a ward or charity to hold the piece against: a TOML or JSON file, or a slug"
    parser.add_argument("--profile", metavar="LIST", help=known)


def stitches(text: str) -> int:
    """Return a number of stitches from what was typed; 1 or more, at most 18 digits."""
    return _whole(text, "a number of stitches", 1, 10**MOST_DIGITS - 1)


def amount(text: str) -> Decimal:
    """Return an amount of yarn or a length above 0, with the digits that were typed."""
    plain = text.strip()
    if len(plain) > MOST_DIGITS or not _DECIMAL.fullmatch(plain) or not Decimal(plain):
        raise argparse.ArgumentTypeError(f"{text[:40]!r} is not a number above 0, such as 350 or 12.5")
    return Decimal(plain)


def span(text: str) -> str:
    """Return a number, or two with .. between them."""
    return _span(text, SPAN, "60..80")


def whole_span(text: str) -> str:
    """Return a whole number, or two with .. between them."""
    return _span(text, WHOLE_SPAN, "2..8")


def _span(text: str, form: str, such_as: str) -> str:
    found = span_of(text.strip(), form)
    if found is None:
        raise argparse.ArgumentTypeError(f"{text[:40]!r} is no number or span, such as {such_as}")
    return found


def gauge(text: str) -> str:
    """Return the stitches to 10 cm, with the rows behind an x where they are told."""
    plain = text.strip().lower()
    if not is_gauge(plain):
        raise argparse.ArgumentTypeError(f"{text[:40]!r} is no gauge over 10 cm, such as 21 or 21x28")
    return plain


def millimetres(text: str) -> int:
    """Return whole millimetres; 1 to 1000."""
    return _whole(text, "a number of millimetres", 1, 1000)


def percent(text: str) -> int:
    """Return a share of a hundred; 1 to 100."""
    return _whole(text, "a share of a hundred", 1, 100)


def rows(text: str) -> int:
    """Return a number of rows; 1 or more, at most 18 digits."""
    return _whole(text, "a number of rows", 1, 10**MOST_DIGITS - 1)


def number(text: str) -> int:
    """Return the number of an edition; 1 or more."""
    return _whole(text, "the number of an edition", 1, 10**9 - 1)


def note_number(text: str) -> int:
    """Return the number of something noted; 1 or more."""
    return _whole(text, "the number of something noted", 1, 10**9 - 1)


def beside(text: str) -> int:
    """Return the stitches beside a body on each side; 0 or more."""
    return _whole(text, "a number of stitches", 0, 10_000)


def strands(text: str) -> int:
    """Return a number of strands held together; 1 to 12."""
    return _whole(text, "a number of strands", 1, 12)


def session(text: str) -> int:
    """Return the minutes of a session; 15 to 480."""
    return _whole(text, "a number of minutes", 15, 480)


def days(text: str) -> int:
    """Return a number of days; 1 to 3650."""
    return _whole(text, "a number of days", 1, 3650)


def port(text: str) -> int:
    """Return a TCP port; 0 lets the system choose."""
    return _whole(text, "a port", 0, 65535)


def year(text: str) -> int:
    """Return a year of four digits."""
    return _whole(text, "a year", 1000, 9999)


def slug(text: str) -> str:
    """Return a name for addresses and files: lower-case letters and digits in groups joined by single hyphens."""
    if len(text) > MOST_SLUG or not _SLUG.fullmatch(text):
        raise argparse.ArgumentTypeError(f"{text[:40]!r} is not lower-case letters and digits joined by single hyphens")
    return text


def person(text: str) -> str:
    """Return the name of somebody; 1 to 200 printable characters."""
    name = text.strip()
    if not name or len(name) > MOST_NAME or not name.isprintable():
        raise argparse.ArgumentTypeError(f"a name of 1 to {MOST_NAME} printable characters is wanted")
    return name


def folder(text: str) -> Path:
    """Return a path; an empty one or one with a NUL is refused."""
    if not text.strip() or "\0" in text:
        raise argparse.ArgumentTypeError("the name of a folder is wanted")
    return Path(text)


def _whole(text: str, what: str, least: int, most: int) -> int:
    plain = text.strip()
    digits = plain.lstrip("+-")
    if not (digits.isascii() and digits.isdigit()) or len(digits) > MOST_DIGITS:
        raise argparse.ArgumentTypeError(f"{text[:40]!r} is not {what} (a whole number from {least} to {most})")
    if not least <= int(plain) <= most:
        raise argparse.ArgumentTypeError(f"{plain} is not {what} (a whole number from {least} to {most})")
    return int(plain)
