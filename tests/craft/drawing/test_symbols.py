"""The symbols of a chart: workings that differ look different, and named crossings look like those spelt out."""

from __future__ import annotations

from itertools import combinations

import pytest

from counterpane.craft.drawing.chart.symbols import Symbol, symbol_of
from counterpane.craft.rows.read import read_row
from counterpane.craft.stitches import Vocabulary

WORKINGS = (
    "k1; p1; yo; k1 tbl; p1 tbl; sl 1; sl 1 wyif; sl 1 kwise; k2tog; ssk; k3tog; sssk; s2kp; p2tog; p2tog tbl; m1; "
    "m1l; m1r; kfb; pfb; kfbf; bind off 1 st; cast on 1 st; 2/2 LC; 2/2 RC; 2/2 LPC; 2/2 RPC; 1/2 LC"
)
FRONT, BACK = "sl next 2 sts to cn and hold in front", "sl next 2 sts to cn and hold at back"


def drawn(words: str, vocabulary: Vocabulary, wide: int = 1) -> Symbol:
    """Return the symbol of one working."""
    return symbol_of(read_row(words, vocabulary).parts, wide, vocabulary)


def test_workings_that_differ_look_different(vocabulary: Vocabulary) -> None:
    """No two of these are drawn alike, and each has a drawing."""
    symbols = {words: drawn(words, vocabulary) for words in WORKINGS.split("; ")}
    assert all(symbol.known for symbol in symbols.values())
    assert [pair for pair in combinations(symbols, 2) if symbols[pair[0]] == symbols[pair[1]]] == []


@pytest.mark.parametrize(
    ("spelt", "named"),
    [
        (f"{FRONT}, k2, k2 from cn", "2/2 LC"),
        (f"{BACK}, k2, k2 from cn", "2/2 RC"),
        (f"{FRONT}, p2, k2 from cn", "2/2 LPC"),
        ("(k1, p1, k1) into next st", "kfbf"),
    ],
)
def test_a_working_spelt_out_looks_like_the_named_one(spelt: str, named: str, vocabulary: Vocabulary) -> None:
    """What is held in front is the strand on top; three strokes stand for three stitches out of one."""
    assert drawn(spelt, vocabulary) == drawn(named, vocabulary)


@pytest.mark.parametrize("words", ["k below", "k1, k1", "pm"])
def test_what_has_no_drawing_is_a_blank_cell(words: str, vocabulary: Vocabulary) -> None:
    """The key tells it by a number."""
    assert drawn(words, vocabulary) == Symbol(known=False)
