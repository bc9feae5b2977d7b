"""The blocks of a page, which each press lays out in its own way."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TypeAlias

from counterpane.craft.drawing import Picture
from counterpane.craft.pattern import Entry


@dataclass(frozen=True, slots=True)
class Heading:
    """A heading; level 1 is the title."""

    text: str
    level: int = 2


@dataclass(frozen=True, slots=True)
class Paragraph:
    """A paragraph of prose."""

    text: str


@dataclass(frozen=True, slots=True)
class Items:
    """A list of sentences."""

    texts: tuple[str, ...]


@dataclass(frozen=True, slots=True)
class Entries:
    """Short words with what they stand for."""

    entries: tuple[Entry, ...]


@dataclass(frozen=True, slots=True)
class Instructions:
    """Rows to work from, each whole; they belong to the part of this name, which is worked up to a row of the blanket.

    `last_row` is 0 where the rows are numbered by themselves, as in a border that is picked up.
    """

    lines: tuple[str, ...]
    name: str = ""
    first_row: int = 0
    last_row: int = 0


@dataclass(frozen=True, slots=True)
class Orders:
    """Short lines to work from beside the rows: a cast-on, repeat lines."""

    lines: tuple[str, ...]


@dataclass(frozen=True, slots=True)
class Figure:
    """A picture; a page that shows none says it in the picture's sentences and letters."""

    picture: Picture


@dataclass(frozen=True, slots=True)
class Table:
    """Rows of cells under their heads."""

    heads: tuple[str, ...]
    rows: tuple[tuple[str, ...], ...]


Block: TypeAlias = Heading | Paragraph | Items | Entries | Instructions | Orders | Figure | Table
