"""What every store finds and counts, asked of each store in turn."""

from __future__ import annotations

import json
from dataclasses import replace
from itertools import product
from typing import Any

import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from counterpane.library.parts.wanted import CountClass, Span, Trait, Wanted
from counterpane.library.ports import Key, Store
from counterpane.library.sharing.records import Record
from counterpane.storage.memory import MemoryStore
from counterpane.storage.sqlite import SqliteStore
from storage.entries import ANY, entry, slugs

FLAT, ROLLS = Trait("lies", "flat"), Trait("lies", "curls")


def rows(number: int) -> Trait:
    """Return the trait of so many rows."""
    return Trait("row-repeat", str(number), number)


class TestTraits:
    """Filters by what an entry is looked up by."""

    def test_one_of_the_words_must_be_there(self, store: Store) -> None:
        """What has no word of the name is not known, and never found."""
        store.add(entry("moss", traits=(FLAT,)), entry("plain", traits=(ROLLS,)), entry("unknown"))
        assert slugs(store, traits=(("lies", ("flat",)),)) == ["moss"]
        assert slugs(store, traits=(("lies", ("flat", "curls")),)) == ["moss", "plain"]
        assert slugs(store, traits=(("lies", ("flat",)), ("licence", ("CC0-1.0",)))) == []

    def test_a_number_must_lie_within(self, store: Store) -> None:
        """Both ends are included, either may be open, and one of several numbers is enough."""
        store.add(entry("both", traits=(rows(2), rows(8))), entry("four", traits=(rows(4),)), entry("unknown"))
        assert slugs(store, spans=(Span("row-repeat", 4, 8),)) == ["both", "four"]
        assert slugs(store, spans=(Span("row-repeat", None, 3),)) == ["both"]
        assert slugs(store, spans=(Span("row-repeat", 9, None),)) == []
        assert slugs(store, spans=(Span("row-repeat", None, None),)) == ["both", "four"]

    def test_a_revision_has_its_own_traits(self, store: Store) -> None:
        """What an earlier one was is not found."""
        store.add(entry("moss", traits=(FLAT, rows(2))))
        store.revise(entry("moss", "second", traits=(ROLLS,)), None)
        found = [slugs(store, traits=(("lies", (word,)),)) for word in ("flat", "curls")]
        assert (found, slugs(store, spans=(Span("row-repeat", 1, 9),))) == ([[], ["moss"]], [])

    def test_traits_are_restored_and_those_that_lack_are_told(self, store: Store) -> None:
        """A dump of an earlier version holds none; they are put in place, unless another revision came."""
        records = list(_filled(MemoryStore(), entry("moss", traits=(FLAT,)), entry("rib")).records())
        store.restore([each for each in records if each.sort != "trait"])
        lacking = store.without_traits(9)
        assert [each.slug for each in lacking] == ["moss", "rib"]
        assert lacking[:1] == store.without_traits(1)
        store.revise(entry("rib", "second"), None)
        store.put_traits([(each, (ROLLS,)) for each in lacking])
        assert slugs(store, traits=(("lies", ("curls",)),)) == ["moss"]
        assert store.without_traits(9) == ()

    def test_a_whole_dump_lacks_none(self, store: Store) -> None:
        """Its traits are there at once."""
        store.restore(_records(entry("moss", traits=(FLAT,))))
        assert (store.without_traits(9), slugs(store, traits=(("lies", ("flat",)),))) == ((), ["moss"])

    def test_only_those_named_are_found(self, store: Store) -> None:
        """None is found where none is named."""
        store.add(entry("moss"), entry("rib"), entry("waffle"))
        assert (slugs(store, slugs=("waffle", "moss", "none")), slugs(store, slugs=())) == (["moss", "waffle"], [])

    def test_classes_are_told_by_slug(self, store: Store) -> None:
        """In their order; a slug that is not kept has none."""
        classes = (CountClass(4, 1, 5), CountClass(0, 8, 8))
        store.add(entry("moss", classes=classes), entry("rib"))
        assert store.classes("component", ["rib", "moss", "none"]) == {"moss": classes[::-1], "rib": (ANY,)}
        assert store.classes("component", []) == {}


def _filled(store: Store, *entries: Any) -> Store:
    store.add(*entries)
    return store


def _records(*entries: Any) -> list[Record]:
    return list(_filled(MemoryStore(), *entries).records())


class TestFacets:
    """What is found, counted."""

    def test_facets_count_what_the_lists_list(self, store: Store) -> None:
        """For each name and word a list with that filter has so many; what has no word is known by nobody."""
        made = _several()
        store.add(*made)
        found = store.facets(Wanted("component"), 1_000)
        assert (found.total, found.whole) == (len(made), True)
        for name in ("lies", "row-repeat"):
            for word, count in found.words[name].items():
                assert len(slugs(store, traits=((name, (word,)),), limit=100)) == count
        for word, count in found.words["kind"].items():
            assert len(slugs(store, kind=word, limit=100)) == count
        assert found.known["lies"] == sum(any(each.name == "lies" for each in one.traits) for one in made)
        assert found.known["row-repeat"] == sum(any(t.name == "row-repeat" for t in one.traits) for one in made)
        assert found.known["opening"] == len(slugs(store, openings_under_mm=1_000, limit=100))

    @pytest.mark.parametrize(
        "wanted",
        [{}, {"kind": "body"}, {"words": ("firm",)}, {"admits": 8}, {"between": (5, 6)}, {"slugs": ("part-1",)}],
    )
    def test_both_stores_count_alike(self, store: Store, wanted: dict[str, Any]) -> None:
        """Whatever is asked for beside, and to the bound."""
        made = _several()
        store.add(*made)
        plain = _filled(MemoryStore(), *made)
        for most in (3, 1_000):
            asked = Wanted("component", **wanted)
            one, other = store.facets(asked, most), plain.facets(asked, most)
            assert (one.total, one.whole, dict(one.known)) == (other.total, other.whole, dict(other.known))
            assert one.words == {name: dict(words) for name, words in other.words.items()}
        assert store.count(asked) == plain.count(asked) == one.total

    def test_an_empty_answer_has_no_counts(self, store: Store) -> None:
        """Nothing is known of nothing."""
        store.add(entry("moss"))
        found = store.facets(Wanted("component", kind="border"), 9)
        assert (found.total, found.whole, found.words, found.known) == (0, True, {}, {})


def _several() -> list[Any]:
    """Return entries of every mix of a few traits, of kinds, counts and openings in turn."""
    mixes = list(product([(), (FLAT,), (ROLLS,)], [(), (rows(2),), (rows(2), rows(4))]))
    return [
        entry(
            f"part-{place}",
            "firm" if place % 2 else "soft",
            kind="border" if place % 3 == 0 else "body",
            reversible=None if place % 2 else "yes",
            traits=(*lies, *repeat),
            classes=(CountClass(place + 1, 0, place + 1),),
            opening_um=None if place % 2 else 900 * place,
        )
        for place, (lies, repeat) in enumerate(mixes)
    ]


CLASSES = st.builds(
    lambda modulus, residue, least, more: (
        CountClass(0, least, least)
        if modulus == 0
        else CountClass(modulus, residue % modulus, least, None if more is None else least + more)
    ),
    st.integers(0, 7),
    st.integers(0, 9),
    st.integers(1, 12),
    st.none() | st.integers(0, 12),
)
ENTRIES = st.lists(st.lists(CLASSES, min_size=1, max_size=3).map(tuple), max_size=6)
FAR = 200
"""Past the largest count that two of the classes share first."""


@settings(suppress_health_check=[HealthCheck.function_scoped_fixture], max_examples=30, deadline=None)
@given(ENTRIES, st.integers(1, 40), st.integers(0, 12), st.tuples(CLASSES, st.integers(-12, 12)))
def test_counts_are_found_as_by_trying_each(
    tmp_path_factory: Any, made: list[tuple[CountClass, ...]], count: int, wide: int, beside: tuple[CountClass, int]
) -> None:
    """Counts admitted, counts within two, and counts that are shared, in both stores and with other filters."""
    entries = [entry(f"part-{place:02}", classes=tuple(dict.fromkeys(each))) for place, each in enumerate(made)]
    admit = {each.slug: [n for n in range(1, FAR) if any(one.admits(n) for one in each.classes)] for each in entries}
    other, by = beside
    moved = other.shifted(by)
    theirs = {n + by for n in range(1, FAR + 20) if other.admits(n)}
    expected = (
        [slug for slug, counts in admit.items() if count in counts],
        [slug for slug, counts in admit.items() if any(count <= n <= count + wide for n in counts)],
        [slug for slug, counts in admit.items() if theirs.intersection(counts)],
    )
    sqlite = SqliteStore(tmp_path_factory.mktemp("store") / "library.db")
    try:
        for store in (_filled(MemoryStore(), *entries), _filled(sqlite, *entries)):
            assert expected == (
                sorted(slugs(store, admits=count)),
                slugs(store, between=(count, count + wide)),
                slugs(store, meets=(moved,)),
            )
    finally:
        sqlite.close()


@given(CLASSES, CLASSES, st.integers(1, 40), st.integers(0, 20))
def test_classes_are_cut_and_laid_over_each_other_exactly(
    one: CountClass, other: CountClass, low: int, wide: int
) -> None:
    """As by trying each count; the smallest is told."""
    both, part, high = one.common(other), one.between(low, low + wide), low + wide
    shared = [n for n in range(1, FAR) if one.admits(n) and other.admits(n)]
    within = [n for n in range(low, high + 1) if one.admits(n)]
    assert shared == [n for n in range(1, FAR) if both and both.admits(n)]
    assert within == [n for n in range(1, FAR) if part and part.admits(n)]
    assert one.first(low, high) == (within[0] if within else None)
    assert (both is None) == (not shared) and (both is None or both.modulus == 0 or both.least == shared[0])


class TestPagingUnderChange:
    """Cursors stay where they are while others write."""

    @pytest.mark.parametrize("wanted", [{}, {"words": ("firm",)}, {"admits": 12}, {"traits": (("lies", ("flat",)),)}])
    def test_what_is_there_throughout_is_seen_once(self, store: Store, wanted: dict[str, Any]) -> None:
        """Whatever is added, revised or withdrawn from the list between two pages."""
        kept = {f"kept-{number}" for number in range(20)}
        made = [entry(slug, "firm", traits=(FLAT,)) for slug in sorted(kept)]
        passing = [entry(f"gone-{number}", "firm", traits=(FLAT,)) for number in range(10)]
        store.add(*made[:10], *passing, *made[10:])
        found, after, turn = [], None, 0
        while True:
            page = store.page(replace(Wanted("component", limit=3, **wanted), after=after))
            found += [json.loads(card)["slug"] for card in page.cards]
            if (after := _key(page.last)) is None:
                break
            store.add(entry(f"new-{turn}", "firm", traits=(FLAT,)))
            if turn < len(passing):
                changed = replace(passing[turn], content=b"{}", sha256=f"{turn:064x}", words="other", title="other")
                store.revise(replace(changed, traits=(ROLLS,), classes=(CountClass(0, 5, 5),)), None)
            turn += 1
        assert sorted(slug for slug in found if slug in kept) == sorted(kept)


def _key(last: Key | None) -> Key | None:
    """Return a key as a cursor gives it back."""
    return None if last is None else tuple(json.loads(json.dumps(last)))
