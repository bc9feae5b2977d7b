"""What each abbreviation uses and makes.

Source of the list: Craft Yarn Council, Standards & Guidelines for Crochet and Knitting, "Abbreviations - Knitting
Master List"; the arithmetic follows from the definition of each operation. The a/b cable names are from memory.
"""

from __future__ import annotations

import pytest

from counterpane.craft.counts.effects import total
from counterpane.craft.rows.read import read_row
from counterpane.craft.stitches import Vocabulary

WORKINGS = [
    ("k1", 1, 1), ("p1", 1, 1), ("k1 tbl", 1, 1), ("p1 tbl", 1, 1), ("k1b", 1, 1),
    ("sl 1", 1, 1), ("sl 1 kwise", 1, 1), ("sl 1 pwise wyif", 1, 1), ("sl 1 pwise wyib", 1, 1),
    ("wyif", 0, 0), ("wyib", 0, 0),
    ("k2tog", 2, 1), ("p2tog", 2, 1), ("ssk", 2, 1), ("ssp", 2, 1), ("k2tog tbl", 2, 1), ("skp", 2, 1), ("skpo", 2, 1),
    ("sl1-k1-psso", 2, 1), ("sl 1, k1, psso", 2, 1), ("k3tog", 3, 1), ("p3tog", 3, 1), ("sssk", 3, 1), ("sssp", 3, 1),
    ("sk2p", 3, 1), ("sl 1, k2tog, psso", 3, 1), ("s2kp2", 3, 1), ("s2kp", 3, 1), ("cdd", 3, 1),
    ("sl 2, k1, p2sso", 3, 1),
    ("yo", 0, 1), ("yfwd", 0, 1), ("yrn", 0, 1), ("yon", 0, 1), ("yfrn", 0, 1), ("yo twice", 0, 2), ("yo2", 0, 2),
    ("m1", 0, 1), ("m1l", 0, 1), ("m1r", 0, 1), ("m1p", 0, 1), ("m1lp", 0, 1), ("m1rp", 0, 1),
    ("lli", 0, 1), ("rli", 0, 1),
    ("kfb", 1, 2), ("pfb", 1, 2), ("(k1, p1, k1) into next st", 1, 3), ("(k1, yo, k1) into next st", 1, 3),
    ("([k1, p1] twice, k1) into next st", 1, 5), ("mb", 1, 1),
    ("c2b", 2, 2), ("c2f", 2, 2), ("c4b", 4, 4), ("c4f", 4, 4), ("c6b", 6, 6), ("c6f", 6, 6),
    ("t2b", 2, 2), ("t2f", 2, 2), ("t3b", 3, 3), ("t3f", 3, 3), ("t4b", 4, 4), ("t4f", 4, 4),
    ("1/1 rc", 2, 2), ("2/1 lc", 3, 3), ("2/2 rpc", 4, 4), ("3/3 lpc", 6, 6),
    ("pick up and knit 3", 0, 3), ("cast on 3", 0, 3), ("pm", 0, 0), ("sm", 0, 0),
]  # fmt: skip


@pytest.mark.parametrize(("text", "uses", "makes"), WORKINGS, ids=[text for text, _, _ in WORKINGS])
def test_an_abbreviation_uses_and_makes_what_its_definition_says(
    text: str, uses: int, makes: int, vocabulary: Vocabulary
) -> None:
    """Each entry of the list takes and leaves the loops of its definition."""
    read = read_row(text, vocabulary)
    done = total(read.parts, vocabulary)

    assert read.readable, read.faults
    assert (done.uses, done.makes) == (uses, makes)


@pytest.mark.parametrize(("text", "makes"), [("psso", -1), ("p2sso", -2)])
def test_a_pass_over_takes_loops_off_the_right_needle(text: str, makes: int, vocabulary: Vocabulary) -> None:
    """A pass over uses nothing from the left needle and takes loops off the right one, where they must be."""
    done = total(read_row(text, vocabulary).parts, vocabulary)

    assert (done.uses, done.makes) == (0, makes)
    assert done.needs > -makes


@pytest.mark.parametrize("text", ["inc", "dec", "k1b"])
def test_a_word_of_two_meanings_is_said_to_be_one(text: str, vocabulary: Vocabulary) -> None:
    """An undefined increase or decrease, and k1b, are found to be ambiguous."""
    assert [fault.rule for fault in read_row(text, vocabulary).faults] == ["ambiguous-term"]
