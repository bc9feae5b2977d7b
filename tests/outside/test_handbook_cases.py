"""Worked examples from handbooks that are public domain by age, checked row by row.

Sources: Miss Lambert, My Knitting Book (London 1843); Cornelia Mee, Exercises in Knitting (London 1846); Thérèse de
Dillmont, Encyclopedia of Needlework (English edition, first published 1886). The rows are in present terms; the counts
were worked out by hand from the books' own rows.
"""

from __future__ import annotations

import pytest

from counterpane.craft.stitches import Vocabulary
from counterpane.library.texts.checks import check_text

LAMBERT_SHELL = """(multiple of 25 sts)
Row 1: *[k2tog] 4 times, [yo, k1] 8 times, [k2tog] 4 times, p1; rep from * to end.
Row 2: Purl.
Row 3: Knit.
Row 4: Purl.
Rep rows 1-4.
"""
LAMBERT_VANDYKE_BORDER = """Cast on 7 sts.
Row 1: Knit.
Row 2: Knit.
Row 3: Sl 1, k2, yo, k2tog, yo twice, k2tog.
Row 4: Yo, k2, p1, k2, yo, k2tog, k1.
Row 5: Sl 1, k2, yo, k2tog, k4.
Row 6: K6, yo, k2tog, k1.
Row 7: Sl 1, k2, yo, k2tog, [yo twice, k2tog] twice.
Row 8: K2, p1, k2, p1, k2, yo, k2tog, k1.
Row 9: Sl 1, k2, yo, k2tog, [yo twice, k2tog] 3 times.
Row 10: K2, p1, k2, p1, k2, p1, k2, yo, k2tog, k1.
Row 11: Sl 1, k2, yo, k2tog, k9.
Row 12: Bind off 7 sts, k3, yo, k2tog, k1. (7 sts)
Rep rows 3-12.
"""
MEE_CORAL = """(multiple of 17 sts plus 14)
Cast on 116 sts.
Row 1: K4, k2tog, *yo, k2tog, yo, k2tog, yo, k1, yo, k2, sl 1, k1, psso, k4, k2tog, k2; rep from * to last 8 sts, \
yo, k2tog, yo, k2tog, yo, k4.
Row 2: Purl.
"""
DILLMONT_LACE_396 = """Cast on 13 sts.
Row 1: Sl 1, p1, p2tog, yo, k8, k1.
Row 2: Sl 1, k8, yo, k2, k1 tbl, k1.
Row 3: Sl 1, p2, yo, p2tog, yo, k8, k1.
Row 4: Sl 1, k8, yo, k2tog, yo, k2, k1 tbl, k1.
Row 5: Sl 1, p2, [yo, p2tog] twice, yo, k8, k1.
Row 6: Sl 1, k8, [yo, k2tog] twice, yo, k2, k1 tbl, k1.
Row 7: Sl 1, p2, [yo, p2tog] 3 times, yo, k8, k1.
Row 8: Sl 1, k8, [yo, k2tog] 3 times, yo, k2, k1 tbl, k1.
Row 9: Sl 1, p2, [yo, p2tog] 4 times, yo, k8, k1.
Row 10: Bind off 8 sts, k10, k1 tbl, k1. (13 sts)
"""


@pytest.mark.parametrize(
    ("text", "multiple", "fixed", "afters"),
    [
        (LAMBERT_SHELL, {"of": 25, "plus": 0, "least": 25}, None, [25] * 4),
        (LAMBERT_VANDYKE_BORDER, None, 7, [7, 7, 8, 9, 9, 9, 11, 11, 14, 14, 14, 7]),
        (MEE_CORAL, {"of": 17, "plus": 14, "least": 31}, None, [116, 116]),
        (DILLMONT_LACE_396, None, 13, [13, 14, 15, 16, 17, 18, 19, 20, 21, 13]),
    ],
    ids=["Lambert 1843, shell", "Lambert 1843, vandyke border", "Mee 1846, coral", "Dillmont 1886, lace fig. 396"],
)
def test_a_handbook_example_adds_up_as_worked_by_hand(
    text: str, multiple: dict[str, int] | None, fixed: int | None, afters: list[int], vocabulary: Vocabulary
) -> None:
    """Every count of the example comes out, and nothing is found but counts that the book does not print."""
    answer = check_text(text, vocabulary)
    assert (answer["multiple"], answer["fixed"]) == (multiple, fixed)
    assert [row["after"] for row in answer["rows"]] == afters
    assert [finding for finding in answer["findings"] if finding["rule"] != "count-not-printed"] == []


def test_the_misprint_of_a_handbook_is_found(vocabulary: Vocabulary) -> None:
    """Dillmont 1886, lace fig. 394, casts on 8 where the first row uses 9: stuck in the row, caused by the cast-on."""
    rows = "Row 1: Sl 1, k2, yo, k2tog, k2, yo twice, k2.\nRow 2: K3, p1, k4, yo, k2tog, k1."
    answer = check_text(f"Cast on 8 sts.\n{rows}", vocabulary)
    found = [(finding["rule"], finding["line"]) for finding in answer["findings"]]
    assert found == [("stated-count-wrong", 1), ("row-runs-short", 2)]
    assert answer["fixed"] == 9
