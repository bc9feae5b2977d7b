"""A pattern in another language: its blocks, pictures and values said by a telling, with what that is and lacks.

The English page is made first; every text on it is said in the other language, or stands in English, marked.
"""

from __future__ import annotations

import re
from collections.abc import Iterable, Iterator, Sequence
from dataclasses import dataclass, replace
from html import escape, unescape
from typing import Any, TypeVar

from counterpane.craft.drawing import Picture
from counterpane.craft.language import IN_ENGLISH, Message, Telling, Told
from counterpane.craft.pattern import Entry, Pattern
from counterpane.craft.pattern.texts import texts_said
from counterpane.press import Paper
from counterpane.press.blocks import Block, Entries, Figure, Heading, Instructions, Items, Orders, Paragraph, Table
from counterpane.press.data import as_data
from counterpane.press.html import html_of
from counterpane.press.markdown import markdown_of
from counterpane.press.page import page
from counterpane.press.pdf import pdf_of
from counterpane.press.text import text_of
from counterpane.press.words import PageWords

Thing = TypeVar("Thing")

NOTICE = (
    "Unreviewed translation: no native editor has read it. Where it differs from the English text, the English text "
    "decides. What stands in square brackets as English is not translated; sources stand as they are cited."
)
_ABBREVIATIONS = "Abbreviations"
_NAMES = ("title", "designer", "edition", "terms", "units", "side", "label", "next_side", "components", "texture")
_QUOTED = (
    "rule",
    "severity",
    "reference",
    "source",
    "licence",
    "cautions",
    "credits",
    "level",
    "svg",
    "kind",
    "record",
)
_AS_THEY_STAND = frozenset((*_NAMES, *_QUOTED))
"""Fields of a pattern that are names, keys or quotations; of safety the answer of the rules stands as it is."""
_STOP = "Safety says stop: read the cautions at the end before you begin."
_REPEAT = Message("Rep rows {n1}–{n2} {often}.")
_FOOT = Message("{n1} rows, {n2} stitches cast on")
_SVG_TEXT = re.compile(r"(?<=>)[^<>]*[^<>\s][^<>]*(?=</)")


@dataclass(frozen=True, slots=True)
class Completeness:
    """How many sentences of a pattern are translated, and which stand in English."""

    sentences: int
    missing: tuple[str, ...]

    @property
    def translated(self) -> int:
        """The sentences that are."""
        return self.sentences - len(self.missing)


class Translation:
    """Says the blocks of a page in one language, and keeps what it found no words for."""

    def __init__(self, telling: Telling) -> None:
        self.telling = telling
        self.sentences = 0
        self.missing: list[str] = []
        self.listed: tuple[Entry, ...] = ()

    @property
    def completeness(self) -> Completeness:
        """How complete all is that was said so far."""
        return Completeness(self.sentences, tuple(self.missing))

    def say(self, text: str) -> str:
        """Say a text."""
        told: Told = self.telling.tell(text)
        self.sentences += told.sentences
        self.missing += told.missing
        return told.text

    def blocks(self, pattern: Pattern, pictures: Sequence[Picture] = ()) -> tuple[Block, ...]:
        """Return the page of a pattern in the language, with what it says of itself under its title."""
        title, *english = page(pattern, tuple(self.picture(picture) for picture in pictures))
        said: list[Block | None] = []
        under = ""
        for block in english:
            said.append(None if under == _ABBREVIATIONS and isinstance(block, Entries) else self._block(block, pattern))
            under = block.text if isinstance(block, Heading) else under
        worked = "\n".join(_worked(block for block in said if block))
        self.listed = self.abbreviations(pattern, worked)
        notice = (Paragraph(text),) if (text := self.notice()) else ()
        return (title, *notice, *(block or Entries(self.listed) for block in said))

    def notice(self) -> str:
        """Say that nobody has reviewed the translation; a reviewed one says nothing of it."""
        return "" if self.telling.language.reviewed else self.say(NOTICE)

    def abbreviations(self, pattern: Pattern, worked: str) -> tuple[Entry, ...]:
        """List the abbreviations of the language that stand in the text."""
        listed = [entry for each in pattern.abbreviations for entry in self._abbreviated(each)]
        own = self.telling.language.say(Message("none", context="abbreviation"))
        listed += [Entry(name, means) for name, _, means in (each.partition(": ") for each in own.split("; ")) if means]
        found = {entry.name: entry for entry in listed if _stands(entry.name, worked)}
        return tuple(sorted(found.values(), key=lambda entry: (entry.name.lower(), entry.name)))

    def _abbreviated(self, entry: Entry) -> Iterator[Entry]:
        means = self.say(entry.text)
        for name in entry.name.split(", "):
            yield Entry(self.telling.short(name), means)

    def picture(self, picture: Picture) -> Picture:
        """Return a picture with its sentences, and the words in it, in the language."""
        charts = tuple(
            replace(chart, heading=self.say(chart.heading), note=self.say(chart.note)) for chart in picture.charts
        )
        key = tuple((sign, self.say(means)) for sign, means in picture.key)
        lines = tuple(map(self.say, picture.lines))
        return replace(picture, lines=lines, charts=charts, key=key, svg=_SVG_TEXT.sub(self._drawn, picture.svg))

    def _drawn(self, match: re.Match[str]) -> str:
        """Say the words in a drawing; letters and numbers of a chart, and what is not known, stay as they are."""
        text = unescape(match[0])
        told = self.telling.tell(text)
        return match[0] if told.missing else escape(told.text)

    def values(self, thing: Thing) -> Thing:
        """Return a value with all texts said that are no names, keys or quotations."""
        return texts_said(thing, self.say, _AS_THEY_STAND)

    def _block(self, block: Block, pattern: Pattern) -> Block:
        match block:
            case Heading(text, level):
                return Heading(self.say(text), level)
            case Paragraph(text):
                return Paragraph(text if text == f"{pattern.edition}." else self.say(text))
            case Items(texts):
                return Items(tuple(map(self.say, texts)))
            case Entries(entries):
                return Entries(tuple(self._entry(entry, pattern) for entry in entries))
            case Instructions(lines, name, first, last):
                return Instructions(tuple(map(self.say, lines)), self.say(name), first, last)
            case Orders(lines):
                return Orders(tuple(map(self.say, lines)))
            case Table(heads, rows):
                return Table(tuple(map(self.say, heads)), tuple(tuple(map(self.say, row)) for row in rows))
            case Figure():
                return block

    def _entry(self, entry: Entry, pattern: Pattern) -> Entry:
        own = entry.text == pattern.designer
        return Entry(self.say(entry.name), entry.text if own else self.say(entry.text))


def _worked(blocks: Iterable[Block]) -> Iterator[str]:
    """Give all lines in which an abbreviation may stand."""
    for block in blocks:
        match block:
            case Instructions(lines=lines) | Orders(lines) | Items(lines):
                yield from lines
            case Paragraph(text):
                yield text


def _stands(name: str, text: str) -> bool:
    """Tell whether an abbreviation stands in a text by itself."""
    return (
        re.search(rf"(?<!\w){re.escape(name)}(?!\w)" if name[:1].isalnum() else re.escape(name[:1]), text) is not None
    )


def in_language(telling: Telling, form: str, pattern: Pattern, pictures: Sequence[Picture], paper: Paper) -> bytes:
    """Return a pattern in a language and a form: text, markdown, html or pdf; equal patterns give equal bytes."""
    blocks = Translation(telling).blocks(pattern, pictures)
    match form:
        case "text":
            return text_of(blocks).encode()
        case "markdown":
            return markdown_of(blocks).encode()
        case "html":
            return html_of(blocks, pattern.title, pattern.terms, paper, pattern.edition, words=words_of(telling))
    foot = telling.language.say(_FOOT, n1=str(pattern.last_row), n2=str(pattern.cast_on.stitches))
    words = words_of(telling)
    return pdf_of(blocks, pattern.title, pattern.terms, paper, foot=foot, edition=pattern.edition, words=words)


def data_in_language(telling: Telling, pattern: Pattern, pictures: Sequence[Picture]) -> dict[str, Any]:
    """Return a pattern in a language as JSON values, with how complete the translation is, and its text.

    `safety` is the answer of the safety rules as it was given, in English.
    """
    whole = Translation(telling)
    blocks = whole.blocks(pattern, pictures)
    said = Translation(telling)
    told = replace(
        said.values(pattern),
        abbreviations=whole.listed,
    )
    complete = whole.completeness
    translation = {
        "language": telling.language.code,
        "reviewed": telling.language.reviewed,
        "notice": whole.notice(),
        "sentences": complete.sentences,
        "translated": complete.translated,
        "in_english": list(dict.fromkeys(complete.missing)),
    }
    data = as_data(told, tuple(map(said.picture, pictures)))
    return {"pattern": {**data, "translation": translation}, "text": text_of(blocks)}


def words_of(telling: Telling) -> PageWords:
    """Return the words of a page in the language."""
    english = PageWords()
    return PageWords(
        code=telling.language.code,
        again=telling.language.say(_REPEAT).partition(" ")[0],
        stop=telling.tell(_STOP).text.partition(":")[0],
        times=telling.tell(english.times).text,
        row=telling.word(english.row),
        rows=telling.word(english.rows),
        of_the_blanket=telling.word(english.of_the_blanket),
        before=telling.word(english.before),
        after=telling.word(english.after),
        done=telling.word(english.done),
        english=telling.language.say(IN_ENGLISH, own="\0").partition("\0")[0],
    )
