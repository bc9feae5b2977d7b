"""Small wordings that several answers share: stitches, centimetres, progressions, and text made safe to show."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from typing import Any

SEVERITIES = {"stop": "stop", "error": "error", "warn": "warning", "warning": "warning", "note": "note"}


def visible(text: str) -> str:
    """Return one line of given text with control characters as pictures, each still one character wide."""
    return "".join(_picture(sign) for sign in text)


def number_of(count: int, noun: str) -> str:
    """Return `1 row`, `2 rows`, `no rows`; the thing's plural ends in s, or es after ch."""
    many = f"{noun}es" if noun.endswith("ch") else f"{noun}s"
    return f"{count:,} {noun if count == 1 else many}" if count else f"no {many}"


def progression(multiple: Mapping[str, int]) -> str:
    """Return a class of counts in words: `a multiple of 6 stitches plus 3, at least 9`."""
    of, plus, least = multiple["of"], multiple["plus"], multiple["least"]
    named = "any number of stitches" if of == 1 else f"a multiple of {of} stitches{f' plus {plus}' if plus else ''}"
    return named if of == 1 and least == 1 else f"{named}, at least {least}"


def listed(names: Sequence[str], last: str = "and") -> str:
    """Return names as in a sentence: `a, b and c`."""
    return names[0] if len(names) == 1 else f"{', '.join(names[:-1])} {last} {names[-1]}" if names else ""


def tally(findings: Sequence[Mapping[str, Any]]) -> str:
    """Return how many findings there are of each severity: `1 error, 2 warnings`."""
    found = [finding["severity"] for finding in findings]
    return ", ".join(number_of(found.count(kind), noun) for kind, noun in SEVERITIES.items() if kind in found)


def _picture(sign: str) -> str:
    code = ord(sign)
    if sign == "\t":
        return " "
    if code < 0x20 or code == 0x7F:
        return chr(0x2421 if code == 0x7F else 0x2400 + code)
    return sign if sign.isprintable() or sign == " " else "\N{REPLACEMENT CHARACTER}"
