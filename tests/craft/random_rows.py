"""Random rows as trees for Hypothesis, each node at a place of its own."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import replace
from itertools import count

from hypothesis import strategies as st

from counterpane.craft.rows.tree import (
    BindOff,
    CastOn,
    Group,
    Hold,
    IntoOne,
    Marker,
    Node,
    OpenRepeat,
    Place,
    Turn,
    Work,
)

Nodes = tuple[Node, ...]
STITCHES = ("k", "p", "sl", "k2tog", "ssk", "k3tog", "kfb", "yo", "m1", "psso", "c4f", "wyif")


def placed(parts: Nodes) -> Nodes:
    """Give every node a place of its own, in reading order."""
    return tuple(_numbered(parts, count(1)))


def _numbered(parts: Nodes, numbers: Iterator[int]) -> Iterator[Node]:
    for node in parts:
        here = replace(node, place=Place(1, next(numbers)))
        if isinstance(here, Group | IntoOne | OpenRepeat):
            here = replace(here, parts=tuple(_numbered(here.parts, numbers)))
        if isinstance(here, OpenRepeat) and here.last is not None:
            here = replace(here, last=tuple(_numbered(here.last, numbers)))
        yield here


works = st.builds(Work, st.sampled_from(STITCHES), st.integers(0, 4))
plain_works = st.builds(Work, st.sampled_from(("k", "p", "sl")), st.integers(1, 4))
single = st.builds(Work, st.sampled_from(("k", "p", "yo", "kfb", "psso")), st.integers(1, 2))
singles = st.lists(st.one_of(single, st.builds(Group, st.tuples(single), st.integers(0, 2))), max_size=3)
into_ones = st.one_of(
    st.builds(IntoOne, singles.map(lambda parts: (Work("k"), *parts)), st.sampled_from((1, 1, 2))),
    st.builds(IntoOne, st.lists(st.one_of(works, plain_works), max_size=2).map(tuple), st.sampled_from((1, 2))),
)
bind_offs = st.builds(BindOff, st.integers(1, 3), joined=st.booleans())
cast_ons = st.builds(CastOn, st.integers(1, 3))
cables = st.sampled_from(
    (
        (Hold(2), Work("k", 2), Work("k", 2, held=True)),
        (Hold(1, "front"), Work("k", 2), Work("p", held=True)),
        (Hold(2), Work("k", 2), Work("k", 1, held=True)),
        (Work("k", held=True),),
    )
)


def _grouped(inner: st.SearchStrategy[Node]) -> st.SearchStrategy[Node]:
    return st.builds(Group, st.lists(inner, max_size=3).map(tuple), st.integers(0, 4))


closed = st.recursive(st.one_of(works, plain_works, into_ones, bind_offs, cast_ons), _grouped, max_leaves=5)
closed_lists = st.one_of(
    st.lists(st.one_of(plain_works, closed), max_size=3).map(tuple),
    st.builds(lambda a, cable, b: (*a, *cable, *b), st.lists(works, max_size=1), cables, st.lists(works, max_size=1)),
)
bodies = st.one_of(st.lists(st.one_of(plain_works, works), min_size=1, max_size=3).map(tuple), closed_lists)
stops = st.one_of(st.none(), st.integers(0, 6))
open_repeats = st.one_of(
    st.builds(OpenRepeat, bodies, stops, last=st.one_of(st.none(), st.none(), bodies)),
    st.builds(
        OpenRepeat, st.tuples(st.builds(Work, st.sampled_from(("k", "p", "k2tog", "kfb")))), stops, st.just(True)
    ),
    st.builds(BindOff, st.none()),
)


def _fitting(parts: Nodes, body: Nodes, rest: Sequence[Work], own: bool) -> Nodes:
    """Put a repeat between two lists, with the stop that the plain rest asks for, or none printed."""
    stop = sum(work.times for work in rest)
    return (*parts, OpenRepeat(body, None if own else stop), *rest)


fitting_rows = st.builds(_fitting, closed_lists, bodies, st.lists(plain_works, max_size=2), st.booleans())
wild_rows = st.lists(
    st.one_of(closed, closed, open_repeats, st.builds(Turn), _grouped(st.one_of(closed, open_repeats))), max_size=4
).map(tuple)
simple_rows = st.sampled_from(
    (
        (OpenRepeat((Work("k"),), 0, plain=True),),
        (OpenRepeat((Work("p"),), 0, plain=True),),
        (Work("k"), OpenRepeat((Work("yo"), Work("k2tog")), 1), Work("k")),
        (OpenRepeat((Work("k", 2), Work("p", 2)), 2), Work("k", 2)),
        (OpenRepeat((Work("kfb"),), 0),),
        (OpenRepeat((Work("k2tog"),), 0),),
        (OpenRepeat((Work("k"),), 3, plain=True), Turn()),
        (OpenRepeat((Work("k"),), 0, plain=True), Work("m1", 3, evenly=True)),
        (OpenRepeat((Work("p"),), 7, plain=True), Work("k2tog", 3, evenly=True), Work("k")),
        (Work("k", 4), Turn(), OpenRepeat((Work("p"),), 0, plain=True)),
    )
)
rows = st.one_of(simple_rows, fitting_rows, fitting_rows, wild_rows).map(placed)
chains = st.lists(rows, min_size=1, max_size=4)

to_marker = st.builds(OpenRepeat, st.tuples(works), st.integers(0, 2), st.just(True), st.just(True))
marker_nodes = st.one_of(
    plain_works,
    plain_works,
    works,
    st.builds(Marker, st.sampled_from(("place", "slip", "slip", "remove"))),
    to_marker,
    st.builds(OpenRepeat, st.tuples(plain_works), st.integers(0, 3), st.just(True)),
    st.builds(Turn),
)
marker_rows = st.one_of(
    st.lists(marker_nodes, max_size=6).map(tuple),
    st.lists(marker_nodes, max_size=3).map(lambda parts: (Group(tuple(parts), 2),)),
    st.lists(plain_works, min_size=1, max_size=3).map(lambda parts: (*parts, OpenRepeat((Work("k"),), 0, plain=True))),
).map(placed)
set_ups = st.lists(st.integers(0, 4), min_size=2, max_size=4).map(
    lambda counts: placed(
        (*(node for n in counts for node in (Work("k", n), Marker("place"))), OpenRepeat((Work("k"),), 0, plain=True))
    )
)
sides = st.sampled_from((None, "round"))
marker_chains = st.builds(
    lambda first, others: [first, *others], set_ups, st.lists(marker_rows, min_size=1, max_size=3)
)
