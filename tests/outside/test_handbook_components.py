"""The collection of old textures and edgings, row by row, against counts worked out by hand from the books' own rows.

Sources: Miss Lambert, My Knitting Book (London 1843); Cornelia Mee, Exercises in Knitting (London 1846); Thérèse de
Dillmont, Encyclopedia of Needlework (English edition, first published 1886). The section of each is named beside it.
Each line holds a cast-on, the stitches after each row, and the multiple that the book itself states: of, plus.
"""

from __future__ import annotations

from collections.abc import Mapping

import pytest

from counterpane.craft.component import Component, derive
from counterpane.craft.counts import judge, work
from counterpane.craft.stitches import Vocabulary
from counterpane.craft.trace import trace
from counterpane.seeding import load_sources

Line = tuple[int, tuple[int, ...], tuple[int, int] | None]

LAMBERT_1843: dict[str, Line] = {
    "siberian-ground": (64, (64,) * 4, None),  # Siberian Cuffs (ground)
    "barleycorn": (3, (3, 3), (2, 1)),  # Barley-corn Stitch
    "knitted-insertion": (9, (9, 9), None),  # Knitted Insertion
    "coral-trimming": (2, (2, 2), None),  # Coral Trimming for a Muslin Dress
    "rose-leaf": (43, (43,) * 8, (10, 3)),  # Twelve patterns, II. Rose-leaf Pattern
    "chevron-lace": (8, (8, 8), (8, 0)),  # Twelve patterns, VI. Chevron Pattern
    "vandyke-ground": (10, (10,) * 4, (10, 0)),  # Twelve patterns, VII. Vandyke Pattern
    "german-pattern": (21, (21,) * 12, (21, 0)),  # Twelve patterns, X. German Pattern
    "diamond-lace": (8, (8,) * 8, (8, 0)),  # Twelve patterns, XI. Diamond Pattern
    "shell-lace": (25, (25,) * 4, (25, 0)),  # Twelve patterns, XII. Shell Pattern
    "cable-knitting": (6, (6,) * 8, (6, 0)),  # Cable Knitting
    "purse-openwork": (100, (100, 100), None),  # A Purse (100 stitches)
    "herringbone-openwork": (80, (80, 80), (4, 0)),  # Herringbone, or Shetland Stitch for a Purse
    "diagonal-check-lace": (8, (8,) * 8, (8, 0)),  # Bags, I. Diagonal Check Pattern Bag
    "knitted-fringe": (8, (8, 8), None),  # Knitted Fringe
    "vandyke-edging": (7, (8, 9, 9, 9, 11, 11, 14, 14, 14, 7), None),  # Vandyke Border
    "eyelet-border": (2, (2, 2), (2, 0)),  # A Border for a Shawl or Quilt
    "shetland-shawl-lace": (6, (6,) * 8, (6, 0)),  # Shetland Pattern for a Shawl
    "muff-stitch": (45, (45, 45), None),  # Another Muff
    "raised-knitting": (360, (360,) * 4, (2, 0)),  # Raised Knitting for a Shawl
    "open-cuff-stitch": (12, (6, 12, 12, 6, 12, 12), (2, 0)),  # Open Stitch for Cuffs
    "muffatee-rib": (54, (54, 54), None),  # Plain Ribbed Muffatees
    "fine-silk-openwork": (9, (9, 9), (3, 0)),  # A Purse in fine Silk
    "air-pillow-stitch": (240, (480, 240), None),  # A Cover for an Air Pillow
}
MEE_1846: dict[str, Line] = {
    "nuns-lace": (112, (112,) * 6, (8, 8)),  # Chair covers, II. Nun’s Pattern
    "viennoise": (116, (116,) * 12, (9, 8)),  # Chair covers, III. Viennoise Pattern
    "coral-lace": (116, (116,) * 12, (17, 14)),  # Chair covers, IV. Beautiful Coral Pattern
    "beautiful-diamond": (128, (123,) * 2 + (128,) * 10, (24, 8)),  # Chair covers, V. Beautiful Diamond Pattern
    "feather-lace": (108, (108,) * 4, (25, 8)),  # Chair covers, VI. Pretty Feather Pattern
    "double-rose-leaf": (
        122,
        (110, 110, 110, 110, 110, 110, 122, 122),
        (19, 8),
    ),  # Chair covers, VII. (Double) Rose-Leaf Pattern
    "spider-net": (
        113,
        (113,) * 2 + (107,) + (113,) * 4 + (107,) + (113,) * 2,
        (35, 8),
    ),  # Chair covers, VIII. Pretty Spider-Net Pattern
    "shield-lace": (113, (113,) * 10 + (120,) * 14 + (113,) * 4, (15, 8)),  # Chair covers, IX. Shield Pattern
    "leaf-and-rib-lace": (
        106,
        (113, 106, 113, 106, 113, 106, 113, 106, 113, 106, 113, 106, 113, 106, 113, 106),
        (14, 8),
    ),  # Chair covers, XII. Another Leaf Pattern
    "narrow-vandyke-edging": (8, (9, 10, 10, 11, 13, 13, 13, 8), None),  # Narrow Vandyke Edging
    "lace-edging-of-twelve": (12, (17, 17, 17, 12, 17, 17, 17, 12), None),  # New Pattern for Lace Edging
    "pretty-open-lace": (9, (9,) * 6, (9, 0)),  # Pretty Open Pattern
    "basket-serviette-lace": (76, (76,) * 8, (6, 4)),  # Pretty Pattern for Basket Serviettes
    "twisted-knitting": (12, (12,) * 10, None),  # Twisted Knitting
    "fan": (9, (15, 15, 13, 11, 9, 9), (9, 0)),  # Fan Pattern
}
DILLMONT_1886: dict[str, Line] = {
    "figured-pique": (14, (14,) * 4, (14, 0)),  # Piqué pattern (fig. 376)
    "two-thread-pattern": (8, (8,) * 14, (4, 0)),  # Knitting pattern with two kinds of thread (fig. 386)
    "every-row-lace": (4, (4,) * 8, (4, 0)),  # Knitting pattern (fig. 390)
    "knitted-lace-396": (13, (13, 14, 15, 16, 17, 18, 19, 20, 21, 13), None),  # Knitted lace (fig. 396)
}
BOOKS = {"lambert-1843": LAMBERT_1843, "mee-1846": MEE_1846, "dillmont-1886": DILLMONT_1886}
PRINTED = [(slug, line) for lines in BOOKS.values() for slug, line in lines.items()]
PLACED = [(slug, book) for book, lines in BOOKS.items() for slug in lines]


@pytest.mark.parametrize(("slug", "line"), PRINTED, ids=[slug for slug, _ in PRINTED])
def test_a_part_out_of_a_book_comes_out_as_worked_by_hand(
    slug: str, line: Line, starters: Mapping[str, Component], vocabulary: Vocabulary
) -> None:
    """Both roads leave the stitches of the book after every row, and its stated multiple is true."""
    cast_on, after, stated = line
    (version,) = derive(starters[slug], vocabulary).versions
    rows, sides = [row.parts for row in version.rows], [row.side for row in version.rows]

    assert tuple(step.after for step in work(rows, cast_on, vocabulary, sides)) == after
    assert tuple(step.after for step in trace(rows, cast_on, vocabulary, sides).steps) == after
    assert stated is None or judge(*stated, version.starts[0]) == "right"


@pytest.mark.parametrize(("slug", "book"), PLACED)
def test_a_part_out_of_a_book_names_its_place_there(slug: str, book: str, starters: Mapping[str, Component]) -> None:
    """Title, author and year of the book, and the section in it."""
    origin, source = starters[slug].provenance, load_sources()[book]

    assert (origin.source, origin.year) == (book, source.year)
    assert origin.where
    assert source.author


def test_there_are_forty_of_them_at_least() -> None:
    """A collection one can choose from."""
    assert len(PRINTED) >= 40
