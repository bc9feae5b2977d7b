"""What every store must do with lists: pages in order, filters, and the parts that admit a count."""

from __future__ import annotations

import json

from counterpane.library.ports import CountClass, Key, Store, Wanted
from storage.entries import ANY, entry, slugs


def all_pages(store: Store, limit: int, **wanted: object) -> list[str]:
    """Return the slugs of all pages, following each page's key."""
    found: list[str] = []
    after: Key | None = None
    while True:
        page = store.page(Wanted("component", limit=limit, after=after, **wanted))  # type: ignore[arg-type]
        found += [json.loads(card)["slug"] for card in page.cards]
        if (after := page.last) is None:
            return found


class TestPages:
    """Lists, filters and their order."""

    def test_a_page_goes_by_slug_and_leads_to_the_next(self, store: Store) -> None:
        """Every item is seen once, in order."""
        names = [f"body-{number:02}" for number in range(7)]
        store.add(*(entry(name) for name in reversed(names)))
        assert all_pages(store, limit=3) == names

    def test_the_last_full_page_has_no_successor(self, store: Store) -> None:
        """A page that ends with the last item does not promise more."""
        store.add(entry("one"), entry("two"))
        assert store.page(Wanted("component", limit=2)).last is None

    def test_filters_narrow_the_list(self, store: Store) -> None:
        """Kind, reversible and status each leave only what has that value."""
        store.add(entry("moss"), entry("cable", reversible="no"), entry("edge", kind="selvedge", status="accepted"))
        assert slugs(store, reversible="no") == ["cable"]
        assert slugs(store, kind="selvedge") == ["edge"]
        assert slugs(store, status="draft") == ["cable", "moss"]

    def test_openings_are_found_by_what_was_measured(self, store: Store) -> None:
        """Under a limit means under it, and what nobody measured answers no limit; a later revision replaces it."""
        store.add(entry("closed", opening_um=4_999), entry("open", opening_um=5_000), entry("unknown"))
        assert slugs(store, openings_under_mm=5) == ["closed"]
        assert slugs(store, openings_under_mm=6) == ["closed", "open"]
        store.revise(entry("open", "second"), None)
        assert slugs(store, openings_under_mm=6) == ["closed"]

    def test_words_find_what_holds_them_all_with_titles_first(self, store: Store) -> None:
        """An entry with the words in its title comes before one that has them in its text."""
        store.add(entry("a-body", "like garter, firm"), entry("garter", "firm"), entry("moss", "firm"))
        assert slugs(store, words=("GARTER",)) == ["garter", "a-body"]
        assert slugs(store, words=("like", "garter")) == ["a-body"]
        assert all_pages(store, limit=1, words=("firm",)) == ["a-body", "garter", "moss"]

    def test_words_follow_a_revision(self, store: Store) -> None:
        """The search knows the latest words only."""
        store.add(entry("moss", "springy"))
        store.revise(entry("moss", "damp"), None)
        assert (slugs(store, words=("springy",)), slugs(store, words=("damp",))) == ([], ["moss"])


class TestAdmits:
    """Which components admit a stitch count."""

    def test_a_multiple_admits_from_its_least_count(self, store: Store) -> None:
        """A multiple of 6 plus 2, at least 14, admits 14 and 20, and neither 8 nor 15."""
        store.add(entry("waffle", classes=(CountClass(6, 2, 14),)))
        assert [slugs(store, admits=count) for count in (8, 14, 15, 20)] == [[], ["waffle"], [], ["waffle"]]

    def test_a_fixed_count_admits_only_itself(self, store: Store) -> None:
        """A modulus of 0 is one count."""
        store.add(entry("cable-edge", classes=(CountClass(0, 8, 8),)))
        assert [slugs(store, admits=count) for count in (7, 8, 16)] == [[], ["cable-edge"], []]

    def test_a_class_may_end(self, store: Store) -> None:
        """A part of at most 12 stitches does not admit 13."""
        store.add(entry("border", classes=(CountClass(1, 0, 3, 12),)))
        assert [slugs(store, admits=count) for count in (2, 3, 12, 13)] == [[], ["border"], ["border"], []]

    def test_an_entry_of_several_classes_is_listed_once(self, store: Store) -> None:
        """Classes that overlap do not list the entry twice."""
        classes = (CountClass(2, 0, 2), CountClass(4, 0, 4), CountClass(0, 8, 8))
        store.add(entry("moss", classes=classes), entry("garter"))
        assert all_pages(store, limit=1, admits=8) == ["moss", "garter"]

    def test_answers_go_by_modulus_then_least_then_age(self, store: Store) -> None:
        """The order is the same on every page size."""
        store.add(
            entry("late", classes=(CountClass(3, 0, 3),)),
            entry("plain"),
            entry("wide", classes=(CountClass(3, 0, 9),)),
            entry("early", classes=(CountClass(3, 0, 3),)),
            entry("fixed", classes=(CountClass(0, 12, 12),)),
        )
        wanted = ["fixed", "plain", "late", "early", "wide"]
        assert all_pages(store, limit=2, admits=12) == wanted
        assert all_pages(store, limit=10, admits=12, kind="body") == wanted

    def test_the_count_goes_with_other_filters(self, store: Store) -> None:
        """Kind and words narrow the answer to a count."""
        store.add(entry("moss", "damp"), entry("rib", "springy"), entry("edge", "damp", kind="border"))
        assert slugs(store, admits=5, kind="body", words=("damp",)) == ["moss"]
        assert slugs(store, admits=5, kind="border") == ["edge"]

    def test_a_revision_replaces_the_classes(self, store: Store) -> None:
        """What the latest revision does not admit is not listed."""
        store.add(entry("moss", classes=(CountClass(7, 0, 7), ANY)))
        store.revise(entry("moss", "second", classes=(CountClass(2, 1, 3),)), None)
        assert [slugs(store, admits=count) for count in (14, 15)] == [[], ["moss"]]

    def test_the_largest_count_is_answered(self, store: Store) -> None:
        """A count of eighteen digits is one like another."""
        store.add(entry("garter"), entry("rib", classes=(CountClass(4, 2, 6),)))
        assert slugs(store, admits=10**18 - 1) == ["garter"]
