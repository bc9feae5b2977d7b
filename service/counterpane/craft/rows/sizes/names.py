"""What the sizes are called: "Sizes: preemie (newborn, toddler)", "Sizes: S, M and L", "To fit: 0-3 (3-6) months"."""

from __future__ import annotations

import re

from counterpane.craft.rows.sizes.lists import Reading, Span

_LINE = re.compile(
    r"^[^\S\n]*(?:[-•*#>_]+[^\S\n]*)?(?:(?:finished|available|blanket|garment|in)[^\S\n]+)*(?:sizes?|to[^\S\n]+fit)"
    r"(?![^\S\n]+\d{1,2}(?:[^\S\n]*(?:,|and|&|-|to)[^\S\n]*\d{1,2})*(?:[^\S\n]+only|:))"
    r"(?:[^\S\n]*[:=]\**|[^\S\n])[^\S\n]*(?P<names>[^\n]{1,300})$",
    re.MULTILINE,
)
_GROUP = re.compile(r"[(\[]([^()\[\]]*)[)\]]")
_PIECE = re.compile(r"(?:(?!\s(?:and|&|or)\s)[^,;/()\[\]])+")
_MEASURE = re.compile(r"\d\s*(?:cm|mm|in\b|ins\b|inch|\"|')")
_ENDING = re.compile(r"\s*(?:months?|mths|years?|yrs|cm|mm|ins?|inches)?[\s.*_]*$")
LONGEST_NAME = 40  # House.


def names_in(text: str) -> Reading | None:
    """Return the names of the sizes as a text lists them, None where it does not, or names one alone."""
    for line in _LINE.finditer(text):
        entries = _names(text, *line.span("names"))
        if len(entries) > 1 and all(end - start <= LONGEST_NAME for start, end in entries):
            return Reading(entries[0][0], _close(text, entries[-1][1]), entries)
    return None


def _close(text: str, end: int) -> int:
    """Return the place behind a bracket that closes the list."""
    return end + (text[end : end + 1] in (")", "]") and text[end : end + 1] != "")


def _names(text: str, start: int, end: int) -> tuple[Span, ...]:
    """Return where each name stands."""
    groups = list(_GROUP.finditer(text, start, end))
    outside = _pieces(text, start, groups[0].start()) if groups else ()
    if len(groups) == 1 and len(outside) == 1:
        inside = _pieces(text, *groups[0].span(1))
        if len(inside) == 1 and _MEASURE.search(text, *inside[0]):
            return ()
        return (*outside, *inside)
    if len(groups) > 1 and not re.search(r"[,;/]", _GROUP.sub("", text[start:end])):
        return _pieces(text, start, end)
    return _noted(text, start, end)


def _noted(text: str, start: int, end: int) -> tuple[Span, ...]:
    """Return names in a row, each with the note in brackets behind it: "newborn (0-3 months), toddler (1-3 years)"."""
    last = _ENDING.search(text, start, end)
    stop = last.start() if last else end
    cuts = [
        m.span()
        for m in re.compile(r"\s*[,;/]\s*(?:and\s)?(?![^(\[]*[)\]])|\s(?:and|&|or)\s").finditer(text, start, stop)
    ]
    bounds = [start, *(place for cut in cuts for place in cut), stop]
    return tuple(zip(bounds[::2], bounds[1::2], strict=True)) if cuts else ()


def _pieces(text: str, start: int, end: int) -> tuple[Span, ...]:
    """Return the pieces between commas and brackets, without blanks around them."""
    out = []
    for match in _PIECE.finditer(text, start, end):
        words = match.group()
        lead = len(words) - len(words.lstrip())
        if stripped := words.strip(" .*_\n"):
            out.append((match.start() + lead, match.start() + lead + len(stripped)))
    return tuple(out)
