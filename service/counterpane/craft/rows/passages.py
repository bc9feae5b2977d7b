"""The passages beside the rows that knitting patterns have under a heading.

Only headings are known here ("Gauge", "Materials:", "Abbreviations"); what a passage says is read elsewhere.
"""

from __future__ import annotations

import re
from collections.abc import Sequence
from dataclasses import dataclass
from typing import Literal, NamedTuple, TypeAlias

from counterpane.craft.rows.again import begins_again
from counterpane.craft.rows.labels import label_at
from counterpane.craft.rows.statements import CASTING_ON
from counterpane.craft.rows.words import Line

Topic: TypeAlias = Literal["abbreviations", "gauge", "materials", "size", "finishing", "notes"]
_HEADS: dict[Topic, str] = {
    "abbreviations": r"(?:special\s+)?(?:abbreviations?|abbrevs?\b\.?|stitch(?:es)?\s+(?:guide|key))(?:\s+used)?"
    r"|special\s+(?:stitches|terms)|glossary",
    "gauge": r"(?:gauge|tension)(?:\s+swatch)?(?:\s+(?:in|over)\s+[a-z][a-z ]{2,30})?",
    "materials": r"materials?(?:\s+(?:needed|required))?|you(?:'ll|\s+will)\s+need|yarns?|wool|needles?|notions"
    r"|equipment|supplies|materials\s+and\s+(?:gauge|tension)",
    "size": r"(?:finished\s+|approx(?:imate)?\.?\s+)?(?:sizes?|measurements?|dimensions)",
    "finishing": r"finishing|(?:to\s+)?mak(?:e|ing)\s+up|to\s+finish|blocking|care(?:\s+instructions)?",
    "notes": r"(?:pattern\s+|special\s+)?notes?",
}
_BRANCHES = "|".join(f"(?P<{topic}>{names})" for topic, names in _HEADS.items())
# Possessive blanks: a line of a megabyte of them is looked at once.
_HEAD = re.compile(
    rf"[\s#*_•>-]*+(?:{_BRANCHES})(?:\s?\([^()]{{0,80}}\))?[*_]{{0,3}}"
    r"(?:\s*+(?:[:.=]|-(?=\s))[\s*_]*+|\s++(?=\d)|[\s*_-]*+$)"
)
_TOPIC_WORD = re.compile(
    r"abbrev|stitch|special|glossary|gauge|tension|material|need|yarn|wool|notion|equipment|supplies|size|measurement"
    r"|dimension|finish|making up|make up|blocking|care|note",
)
# "rep = repeat" and "co  cast on" in a list of abbreviations order nothing.
_EXPLAINS = re.compile(r"\s*\S{1,12}?(?:\s{0,3}=|\s{2}|:\s|\s-\s|,\s)|\S{1,12}\s[^=:]{1,18}\s{0,3}[=:]\s")
_UNDERLINE = re.compile(r"\s*(?:-{3,}|={3,}|~{3,})\s*$")
_MARKED = re.compile(r"#+\s*\S|(?:\*\*|__)[^*_]+(?:\*\*|__):?\s*$")
_LOOKS_HEADED = re.compile(r"(?:[A-Z][A-Za-z'’-]{3,}|[A-Z]{2,3}(?=\s+[A-Z]{3}))(?:\s+[\w&'’-]+){0,5}:?\s*$")


class Stretch(NamedTuple):
    """A line of a passage from an index of its normal form on."""

    line: Line
    start: int

    @property
    def text(self) -> str:
        """The normal form of the stretch."""
        return self.line.text[self.start :]


@dataclass(frozen=True, slots=True)
class Passage:
    """What stands under a heading, the rest of the heading's own line first; `special` is "Special abbreviations"."""

    topic: Topic
    head: Line
    stretches: tuple[Stretch, ...]
    special: bool = False


def passages_in(lines: tuple[Line, ...], given: tuple[str, ...]) -> tuple[Passage, ...]:
    """Cut out what stands under the known headings; `given` are the same lines as printed."""
    out: list[Passage] = []
    if not any(_TOPIC_WORD.search(line.text) for line in lines):
        return ()
    index = 0
    while index < len(lines):
        head = _head(lines[index])
        if head is None:
            index += 1
            continue
        topic, start, inline = head
        end = index + 1
        while end < len(lines) and not _ends(lines, given, end, inline, topic):
            end += 1
        body = [Stretch(line, 0) for line in lines[index + 1 : end] if not _UNDERLINE.match(line.text)]
        own = [Stretch(lines[index], start)] if inline else []
        stretches = tuple(stretch for stretch in (*own, *body) if stretch.text.strip())
        out.append(Passage(topic, lines[index], stretches, "special" in lines[index].text[:start]))
        index = end
    return tuple(out)


def _head(line: Line) -> tuple[Topic, int, bool] | None:
    """Return the topic that a line heads, where the heading ends, and whether words follow it on the line."""
    match = _HEAD.match(line.text) if line.text[:1] != "=" else None
    if match is None or match.lastgroup is None:
        return None
    topic = next(topic for topic in _HEADS if match[topic])
    return topic, match.end(), bool(line.text[match.end() :].strip())


def _ends(lines: Sequence[Line], given: tuple[str, ...], index: int, inline: bool, topic: Topic) -> bool:
    """Tell whether a passage ends before a line; one that begins on its heading's line ends at a blank one."""
    text = lines[index].text
    if not text.strip():
        return inline
    if _head(lines[index]) is not None or _is_heading(given, index):
        return True
    explains = topic == "abbreviations" and _EXPLAINS.match(text) and not label_at(text, 0, len(text))
    return not explains and begins_rows(text)


def begins_rows(text: str) -> bool:
    """Tell whether a line begins with a row label, a repeat line or a cast-on."""
    start = len(text) - len(text.lstrip(" -•>"))
    return bool(
        label_at(text, start, len(text)) or begins_again(text, start, len(text)) or CASTING_ON.match(text, start)
    )


def _is_heading(given: tuple[str, ...], index: int) -> bool:
    """Tell whether a line is a heading of any kind: underlined, marked, or alone and short with a capital."""
    raw = given[index].strip()
    if _MARKED.match(raw) or (index + 1 < len(given) and _UNDERLINE.match(given[index + 1])):
        return True
    alone = not given[index - 1].strip() and _LOOKS_HEADED.match(raw)
    first, _, rest = raw.lower().partition(" ")
    return bool(alone) and not rest.startswith(first)
