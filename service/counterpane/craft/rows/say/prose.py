"""The words between the rows in full: "Rep rows 1–4 until 20 sts rem, ending with a WS row"."""

from __future__ import annotations

import re
from collections.abc import Mapping

_WORDS: Mapping[str, str] = {
    "alt": "alternate",
    "approx": "approximately",
    "beg": "beginning",
    "bo": "bind off",
    "co": "cast on",
    "cont": "continue",
    "est": "established",
    "foll": "following",
    "incl": "inclusive",
    "patt": "pattern",
    "rep": "repeat",
    "rnd": "round",
    "rnds": "rounds",
    "rs": "right side",
    "st": "stitch",
    "sts": "stitches",
    "ws": "wrong side",
}
"""Abbreviations that mean one thing wherever they stand. Common practice, no source."""

# "St st" is a fabric, "1st" a number, and "20sts" lacks a space; a point before a small letter ends an abbreviation.
_ABBREVIATED = re.compile(
    r"\b(?P<fabric>(?:rev )?st st)\b|\brem\b(?:\.?\s+(?P<rem>sts?)\b)?|(?<=\d)(?P<glued>sts)\b"
    r"|\b(?P<verb>[kp])(?=\s+(?:\d+\s+(?:rows?|rounds?|rnds?)|(?:all\s+|the\s+)*(?:knit|purl|k|p)\s+st\w*)\b)"
    rf"|\b(?P<word>{'|'.join(_WORDS)})\b(?:\.(?=\s+(?-i:[a-z])))?",
    re.IGNORECASE,
)
_VERBS = {"k": "knit", "p": "purl"}


def prose_in_full(text: str) -> str:
    """Spell out the abbreviations of a sentence that is no row; one with two meanings stays."""
    return _ABBREVIATED.sub(_spelt, text)


def _spelt(match: re.Match[str]) -> str:
    found = match.group()
    if match["fabric"]:
        return found
    if match["glued"]:
        return " stitches"
    if match["verb"]:
        return _cased(match, _VERBS[found.lower()])
    if match["word"]:
        return _cased(match, _WORDS[match["word"].lower()])
    return _cased(match, f"remaining {_WORDS[match['rem'].lower()]}" if match["rem"] else "remain")


def _cased(match: re.Match[str], word: str) -> str:
    """Keep a capital; that of "RS", "BO" and their like only where a sentence begins."""
    found = match.group()
    before = match.string[max(0, match.start() - 2) : match.start()].rstrip(" ")
    code = len(found) > 1 and found.rstrip(".").isupper()
    begins = not before or before[-1] in ".\n"
    return word[0].upper() + word[1:] if found[0].isupper() and (begins or not code) else word
