"""The abbreviations of a pattern: exactly those that its rows use, and the stitches that need their steps told."""

from __future__ import annotations

import re
from collections.abc import Iterable, Iterator, Sequence

from counterpane.craft.pattern import Entry, Special
from counterpane.craft.rows.glossary import SHORT_WORDS
from counterpane.craft.rows.say import WordsKind
from counterpane.craft.rows.tree import Group, Hold, IntoOne, Node, OpenRepeat, Row, Work
from counterpane.craft.stitches import Stitch, Terms, Vocabulary

_NUMBERED = re.compile(r"\b([A-Za-z])\d+(?![\w/])")
_SEE = "see Special stitches"


def abbreviations(rows: Iterable[Row], lines: Sequence[str], vocabulary: Vocabulary, terms: Terms) -> tuple[Entry, ...]:
    """List each abbreviation that the lines use, with its meaning in the terms, in the order of the alphabet.

    `lines` are the same rows in words, and all other lines that a knitter reads among them: the names of a stitch that
    stand there are the ones listed.
    """
    text = "\n".join(lines)
    general = [Entry(sign, meaning) for sign, meaning in SHORT_WORDS.items() if _opens_or_stands(sign, text)]
    bare = _NUMBERED.sub(r"\1", text).lower()
    stitches = [entry for key in _keys(rows) if (entry := _entry(vocabulary[key], f"{text.lower()}\n{bare}", terms))]
    return tuple(sorted([*general, *stitches], key=lambda entry: (entry.name.lower(), entry.name)))


def specials(
    rows: Iterable[Row], vocabulary: Vocabulary, terms: Terms, words: WordsKind = "short"
) -> tuple[Special, ...]:
    """List the stitches that cross, gather or reach below others, with their steps, in the order of their keys."""
    stitches = [vocabulary[key] for key in sorted(_keys(rows))]
    return tuple(
        Special(_name(stitch, terms, words), _steps(stitch.said[terms])) for stitch in stitches if _is_special(stitch)
    )


def _name(stitch: Stitch, terms: Terms, words: WordsKind) -> str:
    """Return what rows call a stitch."""
    in_full = stitch.words.get(terms) if words == "full" else None
    return (in_full or stitch.names[terms])[0]


def _opens_or_stands(sign: str, text: str) -> bool:
    """Tell whether a short word or sign stands in a text, with a capital where it opens a sentence."""
    short = sign.removesuffix(" ]")
    return _stands(short, text) or (short.islower() and _stands(short.capitalize(), text))


def _stands(short: str, text: str) -> bool:
    """Tell whether a short word or sign stands in a text by itself."""
    found = re.escape(short)
    return re.search(rf"(?<![\w/]){found}(?![\w/])" if short[0].isalnum() else found, text) is not None


def _entry(stitch: Stitch, text: str, terms: Terms) -> Entry | None:
    """Return the entry of a stitch under the names that a text gives it; a plain English word needs none."""
    said = stitch.said[terms]
    spelt = [name for name in stitch.names[terms] if name != said and _stands(name.lower(), text)]
    return Entry(", ".join(spelt), _SEE if _is_special(stitch) else said) if spelt else None


def _is_special(stitch: Stitch) -> bool:
    crosses = stitch.uses > 1 and stitch.makes == stitch.uses
    return crosses or stitch.key in ("mb", "k below", "p below", "yo wrapped twice")


def _steps(said: str) -> tuple[str, ...]:
    steps = re.split(r", (?:then )?|: ", said)
    return tuple(f"{step[0].upper()}{step[1:]}." for step in steps)


def _keys(rows: Iterable[Row]) -> set[str]:
    nodes = [node for row in rows for node in _flat(row.parts)]
    works = [node for node in nodes if isinstance(node, Work)]
    held = {"sl"} if any(isinstance(node, Hold) for node in nodes) else set()
    yarn = {word for work in works for word in work.manner if word in ("wyif", "wyib")}
    return {work.stitch for work in works} | yarn | held


def _flat(parts: Iterable[Node]) -> Iterator[Node]:
    for node in parts:
        yield node
        if isinstance(node, Group | IntoOne | OpenRepeat):
            yield from _flat(node.parts)
        if isinstance(node, OpenRepeat) and node.last:
            yield from _flat(node.last)
