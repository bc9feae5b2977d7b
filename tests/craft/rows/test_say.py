"""Words made of a tree read back as the same tree, in US and in UK terms."""

from __future__ import annotations

from dataclasses import replace

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from counterpane.craft.rows.read import read_row
from counterpane.craft.rows.say import WordsKind, say_line, say_row
from counterpane.craft.rows.tree import (
    BindOff,
    CastOn,
    Group,
    Hold,
    IntoOne,
    Marker,
    Node,
    OpenRepeat,
    Row,
    Turn,
    Work,
)
from counterpane.craft.stitches import Terms
from counterpane.seeding import load_vocabulary

VOCABULARY = load_vocabulary()
MANNERS = ((), ("pwise",), ("kwise",), ("wyif",), ("pwise", "wyif"), ("pwise", "wyib"))
WORDS = st.sampled_from(("short", "full"))
TERMS = st.sampled_from(("us", "uk"))

works = st.builds(Work, st.sampled_from(sorted(VOCABULARY.stitches)), st.integers(1, 5))
slips = st.builds(Work, st.just("sl"), st.integers(1, 3), st.sampled_from(MANNERS))
coloured = st.builds(
    lambda key, n, colour: Work(key, n, colour=colour),
    st.sampled_from(("k", "p", "k tbl", "k2tog", "ssk", "sl", "patt")),
    st.integers(1, 9),
    st.sampled_from(("green", "mc", "b", "cc2")),
)
small: st.SearchStrategy[Node] = st.one_of(
    works,
    works,
    slips,
    coloured,
    st.builds(BindOff, st.integers(1, 9), st.sampled_from(("", "kwise", "pwise", "in pattern"))),
    st.builds(CastOn, st.integers(1, 9)),
    st.builds(Marker, st.sampled_from(("place", "slip", "remove"))),
)
cable = st.builds(
    lambda n, where, key, often, colour: (
        Hold(n, where),
        Work("k", n),
        Work(key, often, held=True, colour=colour),
    ),
    st.integers(1, 4),
    st.sampled_from(("front", "back")),
    st.sampled_from(("k", "p", "k2tog", "k tbl", "sl", "patt")),
    st.integers(1, 4),
    st.sampled_from((None, "mc")),
)
closed = st.recursive(
    small,
    lambda inner: st.one_of(
        st.builds(Group, st.lists(inner, min_size=1, max_size=3).map(tuple), st.integers(1, 5)),
        st.builds(IntoOne, st.lists(works, min_size=1, max_size=3).map(tuple), st.sampled_from((1, 2))),
    ),
    max_leaves=5,
)
lists = st.one_of(st.lists(closed, min_size=1, max_size=4).map(tuple), cable)
stops = st.one_of(st.none(), st.integers(0, 9))
starred = st.builds(OpenRepeat, lists, stops)
starred_to_marker = st.builds(OpenRepeat, lists, st.integers(0, 3), marker=st.just(True))
runs = st.builds(
    lambda key, stop, marker: OpenRepeat((Work(key),), stop, plain=True, marker=marker),
    st.sampled_from(("k", "p", "patt", "sl", "k tbl", "k2tog")),
    st.integers(0, 9),
    st.booleans(),
)
doubtful = st.builds(lambda parts, times: Group(parts, times, doubtful=True), lists, st.integers(3, 6))
middles = st.one_of(starred, starred_to_marker, runs, doubtful)
all_bound_off = st.builds(lambda manner: (BindOff(None, manner),), st.sampled_from(("", "pwise", "in pattern")))
ends = st.one_of(lists, st.just((Turn(),)), all_bound_off)
altered = st.builds(lambda a, b, stop, last: (*a, OpenRepeat(b, stop, last=last)), lists, lists, stops, lists)
trees = st.one_of(
    st.builds(lambda a, b, c: (*a, b, *c), lists, middles, ends), st.builds(lambda a: (a,), middles), altered
)


@settings(max_examples=200, deadline=None)
@given(tree=trees, terms=TERMS, words=WORDS)
def test_what_is_said_reads_back_as_the_same_tree(tree: tuple[Node, ...], terms: Terms, words: WordsKind) -> None:
    """Reading is the inverse of saying, whatever the terms, abbreviated or in full."""
    said = say_row(tree, VOCABULARY, terms, words)
    read = read_row(said, VOCABULARY, terms)
    assert (read.parts, read.readable) == (tree, True), said


@settings(max_examples=200, deadline=None)
@given(tree=trees, words=WORDS)
def test_us_to_uk_to_us_is_the_identity(tree: tuple[Node, ...], words: WordsKind) -> None:
    """Terms change the words and nothing else."""
    there = read_row(say_row(tree, VOCABULARY, "uk", words), VOCABULARY, "uk").parts
    assert say_row(there, VOCABULARY, "us", words) == say_row(tree, VOCABULARY, "us", words)


@pytest.mark.parametrize(
    ("row", "uk"),
    [
        ("k1, yo, k2tog", "k1, yfwd, k2tog"),
        ("p1, yo, p2tog", "p1, yrn, p2tog"),
        ("k1, yo, p1", "k1, yfrn, p1"),
        ("p1, yo, k1", "p1, yon, k1"),
        ("*yo, k2tog; rep from * to end", "*yfwd, k2tog; rep from * to end"),
        ("*yo, p1, k1; rep from * to end", "*yfrn, p1, k1; rep from * to end"),
        ("bind off 3 sts, k to end", "cast off 3 sts, k to end"),
    ],
)
def test_a_uk_yarn_over_is_named_by_its_neighbours(row: str, uk: str) -> None:
    """Yfwd between knits, yrn between purls, yfrn and yon between the two, across a repeat's join as well."""
    assert say_row(read_row(row, VOCABULARY).parts, VOCABULARY, "uk") == uk


def test_a_line_carries_label_side_and_count() -> None:
    """A whole row line is written as a handbook prints it."""
    row = Row("3", read_row("k2, *p3, k3; rep from * to end", VOCABULARY).parts, "RS", 20)
    assert say_line(row, VOCABULARY) == "Row 3 (RS): K2, *p3, k3; rep from * to end. (20 sts)"
    assert say_line(replace(row, side="round", stated=None), VOCABULARY).startswith("Round 3: K2")
