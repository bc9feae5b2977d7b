"""A pattern in several sizes: the pages of all sizes laid over each other, their numbers in brackets.

What stands on the page of every size and differs in numbers alone is written once. Anything else says for which sizes
it is. The rows themselves must be alike in all sizes.
"""

from __future__ import annotations

from collections.abc import Callable, Hashable, Iterator, Mapping, Sequence
from itertools import count
from typing import TypeVar

from counterpane.craft.pattern import Entry, Pattern
from counterpane.craft.pattern.brackets import in_brackets, shape
from counterpane.press.blocks import Block, Entries, Heading, Instructions, Items, Orders, Paragraph
from counterpane.press.markdown import markdown_of
from counterpane.press.page import page
from counterpane.press.text import text_of

Thing = TypeVar("Thing")
Keyed = Mapping[Hashable, Thing]


class RowsDiffer(ValueError):
    """Two sizes are worked in other rows: no one text says both."""


def as_graded_text(patterns: Sequence[Pattern], names: Sequence[str]) -> str:
    """Return patterns of several sizes as one text; RowsDiffer where their rows are not alike but for numbers."""
    return text_of(_page(patterns, names))


def as_graded_markdown(patterns: Sequence[Pattern], names: Sequence[str]) -> str:
    """Return patterns of several sizes as one Markdown text; RowsDiffer as `as_graded_text`."""
    return markdown_of(_page(patterns, names))


def _page(patterns: Sequence[Pattern], names: Sequence[str]) -> list[Block]:
    title, *blocks = _laid_over([list(page(pattern)) for pattern in patterns], names)
    first, *others = names
    sizes = f"Sizes: {first} ({', '.join(others)})" if others else f"Size: {first}"
    return [title, Heading(sizes, 3), *blocks]


def _laid_over(pages: Sequence[Sequence[Block]], names: Sequence[str]) -> Iterator[Block]:
    """Give the blocks of all pages, chunk by chunk, each with its heading."""
    for sizes, chunks in _together([_keyed(_chunks(each), _heading_of) for each in pages]):
        yield _heading([chunk[0] for chunk in chunks])
        for here, blocks in _together([_keyed(chunk[1:], _kind) for chunk in chunks]):
            yield _block(blocks, [names[sizes[place]] for place in here], whole=len(here) == len(names))


def _chunks(blocks: Sequence[Block]) -> list[list[Block]]:
    """Cut a page at its headings; every page begins with one."""
    chunks: list[list[Block]] = []
    for block in blocks:
        if isinstance(block, Heading):
            chunks.append([])
        chunks[-1].append(block)
    return chunks


def _heading_of(chunk: Sequence[Block]) -> Hashable:
    heading = chunk[0]
    assert isinstance(heading, Heading)
    return heading.level, shape(heading.text)


def _kind(block: Block) -> Hashable:
    return type(block).__name__


def _keyed(things: Sequence[Thing], key: Callable[[Thing], Hashable]) -> dict[Hashable, Thing]:
    """Return things by their key; the second of one key has a key of its own."""
    out: dict[Hashable, Thing] = {}
    for thing in things:
        name = key(thing)
        out[next((name, number) for number in count() if (name, number) not in out)] = thing
    return out


def _together(sizes: Sequence[Keyed[Thing]]) -> Iterator[tuple[tuple[int, ...], list[Thing]]]:
    """Give what has one key, with the sizes that have it, in an order that keeps that of every size."""
    order: list[Hashable] = []
    for keyed in sizes:
        at = 0
        for key in keyed:
            if key in order:
                at = order.index(key) + 1
            else:
                order.insert(at, key)
                at += 1
    for key in order:
        here = tuple(size for size, keyed in enumerate(sizes) if key in keyed)
        yield here, [sizes[size][key] for size in here]


def _heading(blocks: Sequence[Block]) -> Heading:
    headings = [block for block in blocks if isinstance(block, Heading)]
    return Heading(in_brackets([heading.text for heading in headings]) or headings[0].text, headings[0].level)


def _block(blocks: Sequence[Block], names: Sequence[str], *, whole: bool) -> Block:
    """Return the blocks of one kind as one; `whole` says that every size has one."""
    lists = [_lines(block) for block in blocks]
    match blocks[0]:
        case Instructions():
            return Instructions(_rows(lists))
        case Entries():
            return Entries(tuple(_entries([block.entries for block in blocks if isinstance(block, Entries)], names)))
        case Orders():
            return Orders(tuple(_said(lists, names, whole=whole)))
        case Paragraph():
            said = tuple(_said(lists, names, whole=whole))
            return Paragraph(said[0]) if len(said) == 1 else Items(said)
    return Items(tuple(_said(lists, names, whole=whole)))


def _lines(block: Block) -> tuple[str, ...]:
    match block:
        case Heading(text) | Paragraph(text):
            return (text,)
        case Items(texts):
            return texts
        case Instructions(lines) | Orders(lines):
            return lines
    return ()


def _rows(sizes: Sequence[Sequence[str]]) -> tuple[str, ...]:
    """Return the rows of all sizes as one; RowsDiffer where there is no such."""
    if len({len(lines) for lines in sizes}) > 1:
        raise RowsDiffer("a part has more rows in one size than in another")
    found = [in_brackets(lines) for lines in zip(*sizes, strict=True)]
    if None in found:
        raise RowsDiffer(f"a row reads otherwise in another size: {sizes[0][found.index(None)]}")
    return tuple(line for line in found if line is not None)


def _said(sizes: Sequence[Sequence[str]], names: Sequence[str], *, whole: bool) -> Iterator[str]:
    """Give the sentences of all sizes; one that not all sizes have, or not alike, says whose it is."""
    for here, texts in _together([_keyed(lines, shape) for lines in sizes]):
        one = in_brackets(texts)
        if one is not None and whole and len(here) == len(names):
            yield one
            continue
        for text in dict.fromkeys(texts):
            whose = [names[size] for size, other in zip(here, texts, strict=True) if other == text]
            yield f"{_listed(whose)} only: {text}"


def _entries(sizes: Sequence[Sequence[Entry]], names: Sequence[str]) -> Iterator[Entry]:
    """Give the entries of all sizes; where more than numbers differs, the text says it for each."""
    for here, entries in _together([_keyed(each, lambda entry: shape(entry.name)) for each in sizes]):
        whose = [names[size] for size in here]
        texts = _said([(entry.text,) for entry in entries], whose, whole=len(here) == len(sizes))
        name = in_brackets([entry.name for entry in entries]) or entries[0].name
        yield Entry(name, " ".join(texts))


def _listed(names: Sequence[str]) -> str:
    said = names[0] if len(names) == 1 else f"{', '.join(names[:-1])} and {names[-1]}"
    return said[0].upper() + said[1:]
