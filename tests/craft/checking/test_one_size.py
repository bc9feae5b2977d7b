"""Corrections of one size of several: found in the text as given, they are those that its own text would have."""

from __future__ import annotations

import pytest

from counterpane.craft.checking import examine, examine_sizes, with_corrections
from counterpane.craft.rows.sizes import extract_of
from counterpane.craft.stitches import Vocabulary

FRAME = """Sizes: S (M, L)

Cast on 62 (82, 102) sts.
Row 1 (RS): K5 (5, 5), *p2, k2; rep from * to last 5 sts, k5.
{}
Row 4: K to end. 62 (82, 102) sts.
Bind off all sts.
"""
FAULTY = (
    "Row 2: K4, p54 (74, 95), k4.\nRow 3: Knit.",
    "Row 2: K4, p54 (74, 94), k4.\nRow 3: K31, k2tog, k29 (49, 68).",
    "Row 2: K4, p54 (74, 94), k4. 62 (82, 103) sts.\nRow 3: Knit.",
    "Row 2: K2 (2, 2), p58 (78, 98), k2.\nRow 3: Sizes M and L only: purl. Size L only: k4, k94, k5.",
    "Row 2: K4, p54 (74, 94), knti 4.\nRow 3: Knit.",
    "Row 2: K0 (4, 4), p62 (74, 94), k0 (4, 5).\nRow 3: Knit.",
)


@pytest.mark.parametrize("size", [0, 1, 2])
@pytest.mark.parametrize("rows", FAULTY)
def test_corrections_of_a_size_are_those_of_its_text_alone(rows: str, size: int, vocabulary: Vocabulary) -> None:
    """One road looks in the text as given, the other writes the size out and reads that."""
    text = FRAME.format(rows)
    given = examine_sizes(text, vocabulary)[size]
    assert given.instructions.sizes is not None
    own = extract_of(text, given.instructions.sizes, size, keep_lines=True)
    alone = with_corrections(examine(own.text, vocabulary)).corrections
    found = with_corrections(given).corrections
    offered = [(each.kind, each.line, [change.words for change in each.changes], each.weight) for each in alone]
    assert all(
        (each.kind, each.line, [change.words for change in each.changes], each.weight) in offered for each in found
    )


def test_each_faulty_pattern_has_a_correction(vocabulary: Vocabulary) -> None:
    """So that the comparison compares something: each of them has one in some size."""
    texts = [FRAME.format(rows) for rows in FAULTY]
    found = [any(with_corrections(each).corrections for each in examine_sizes(text, vocabulary)) for text in texts]
    assert found == [True] * len(FAULTY)
