"""The reader against an independent grammar of the plain forms, on random rows in words."""

from __future__ import annotations

from pathlib import Path

from hypothesis import given, settings
from hypothesis import strategies as st
from lark import Lark, Transformer

from counterpane.craft.rows.read import read_row
from counterpane.craft.rows.say import say_row
from counterpane.craft.rows.tree import Group, IntoOne, Node, OpenRepeat, Work
from counterpane.seeding import load_vocabulary

GRAMMAR = Lark(Path(__file__).with_name("plain_forms.lark").read_text(encoding="utf-8"), parser="lalr")
VOCABULARY = load_vocabulary()
NAMES = ("k2tog", "p2tog", "ssk", "kfb", "yo", "k3tog", "m1")


class ToTree(Transformer[object, object]):
    """The tree of the reference grammar, in the nodes of the project."""

    def start(self, found):  # type: ignore[no-untyped-def]
        return found[0]

    def items(self, found):  # type: ignore[no-untyped-def]
        return tuple(found)

    def worked(self, found):  # type: ignore[no-untyped-def]
        return Work(str(found[0]), int(found[1]))

    def named(self, found):  # type: ignore[no-untyped-def]
        return Work(str(found[0]))

    def named_times(self, found):  # type: ignore[no-untyped-def]
        return Work(str(found[0]), found[1])

    def group(self, found):  # type: ignore[no-untyped-def]
        return Group(found[0], found[1])

    def into(self, found):  # type: ignore[no-untyped-def]
        return IntoOne(found[0])

    def starred(self, found):  # type: ignore[no-untyped-def]
        return OpenRepeat(found[0], found[1])

    def counted(self, found):  # type: ignore[no-untyped-def]
        return Group(found[0], int(found[1]) + 1)

    def run(self, found):  # type: ignore[no-untyped-def]
        return OpenRepeat((Work(str(found[0])),), found[1], plain=True)

    def to_end(self, found):  # type: ignore[no-untyped-def]
        return 0

    def to_last_one(self, found):  # type: ignore[no-untyped-def]
        return 1

    def to_last(self, found):  # type: ignore[no-untyped-def]
        return int(found[0])

    def once(self, found):  # type: ignore[no-untyped-def]
        return 1

    def twice(self, found):  # type: ignore[no-untyped-def]
        return 2

    def many(self, found):  # type: ignore[no-untyped-def]
        return int(found[0])


plain = st.builds(Work, st.sampled_from(("k", "p")), st.integers(1, 12))
named = st.builds(Work, st.sampled_from(NAMES), st.integers(1, 4))
stitches = st.one_of(plain, named)
closed = st.recursive(
    stitches,
    lambda inner: st.one_of(
        st.builds(Group, st.lists(inner, min_size=1, max_size=3).map(tuple), st.integers(1, 5)),
        st.builds(IntoOne, st.lists(stitches, min_size=1, max_size=3).map(tuple)),
    ),
    max_leaves=6,
)
lists = st.lists(closed, min_size=1, max_size=4).map(tuple)
stops = st.integers(0, 9)
opened = st.one_of(
    st.builds(OpenRepeat, lists, stops),
    st.builds(lambda letter, stop: OpenRepeat((Work(letter),), stop, plain=True), st.sampled_from(("k", "p")), stops),
)
trees = st.one_of(lists, st.builds(lambda a, b, c: (*a, b, *c), lists, opened, lists))


@settings(max_examples=300, deadline=None)
@given(tree=trees)
def test_reader_and_grammar_agree_on_plain_rows(tree: tuple[Node, ...]) -> None:
    """Two readers that share no code give the same tree for the same words."""
    words = say_row(tree, VOCABULARY)
    whole = {"knit": "k to end", "purl": "p to end"}.get(words, words)
    assert ToTree().transform(GRAMMAR.parse(whole)) == read_row(words, VOCABULARY).parts == tree


@settings(max_examples=100, deadline=None)
@given(tree=trees, more=st.integers(1, 9))
def test_reader_and_grammar_agree_on_times_more(tree: tuple[Node, ...], more: int) -> None:
    """A star worked n times more is a group worked n + 1 times."""
    closed_tree = tuple(node for node in tree if not isinstance(node, OpenRepeat))
    words = f"*{say_row(closed_tree, VOCABULARY)}; rep from * {more} times more"
    assert (
        ToTree().transform(GRAMMAR.parse(words)) == read_row(words, VOCABULARY).parts == (Group(closed_tree, more + 1),)
    )
