"""What every store must do, asked of each store in turn."""

from __future__ import annotations

import json
from concurrent.futures import ThreadPoolExecutor

import pytest

from counterpane.library.errors import NotFound, Stale, Taken
from counterpane.library.ports import CountClass, Done, Holder, KeptTexture, Key, Once, Shelf, Store, TextureKey, Wanted
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


class TestOnce:
    """A write under a key is one write."""

    def test_the_second_write_is_the_first(self, store: Store) -> None:
        """It says what was written, and what was sent then."""
        given, once = entry("garter"), Once("key", "sent", "2026-01-02T00:00:00Z", "2026-01-01T00:00:00Z")
        assert store.done(once) is None
        assert store.add(given, once=once) is None
        done = Done("component", "garter", given.sha256, "sent")
        assert (store.done(once), store.add(entry("moss"), once=once)) == (done, done)
        assert slugs(store) == ["garter"]

    def test_the_second_revision_under_a_key_is_the_first(self, store: Store) -> None:
        """The key is looked up before the expected revision is: the first try has changed that."""
        first, second = entry("garter"), entry("garter", "second")
        once = Once("key", "sent", "2026-01-02T00:00:00Z", "2026-01-01T00:00:00Z")
        store.add(first)
        assert store.revise(second, first.sha256, once) is None
        assert store.revise(entry("garter", "third"), first.sha256, once) == store.done(once)
        assert [kept.sha256 for kept in store.history("component", "garter")] == [first.sha256, second.sha256]

    def test_a_revision_that_fails_keeps_no_key(self, store: Store) -> None:
        """It may be sent again once the latest is known."""
        store.add(entry("garter"))
        once = Once("key", "sent", "2026-01-02T00:00:00Z", "2026-01-01T00:00:00Z")
        with pytest.raises(Stale):
            store.revise(entry("garter", "second"), "0" * 64, once)
        assert store.done(once) is None

    def test_an_old_key_is_forgotten(self, store: Store) -> None:
        """It may be used for another write."""
        store.add(entry("garter"), once=Once("key", "sent", "2026-01-02T00:00:00Z", "2026-01-01T00:00:00Z"))
        later = Once("key", "other", "2026-01-04T00:00:00Z", "2026-01-03T00:00:00Z")
        assert (store.done(later), store.add(entry("moss"), once=later)) == (None, None)
        assert store.done(later) == Done("component", "moss", entry("moss").sha256, "other")

    def test_a_write_that_fails_keeps_no_key(self, store: Store) -> None:
        """Both or neither."""
        store.add(entry("garter"))
        once = Once("key", "sent", "2026-01-02T00:00:00Z", "2026-01-01T00:00:00Z")
        with pytest.raises(Taken):
            store.add(entry("garter", "other"), once=once)
        assert store.done(once) is None


class TestRevisions:
    """A slug has a chain of revisions, and none is lost."""

    def test_an_entry_comes_back_byte_for_byte(self, store: Store) -> None:
        """The stored body and content are the bytes that were handed in."""
        given = entry("garter")
        store.add(given)
        kept = store.latest("component", "garter")
        assert (kept.body, kept.sha256, kept.number) == (given.body, given.sha256, 1)
        assert store.object(given.sha256) == given.content

    def test_a_slug_in_use_is_taken_and_nothing_of_the_batch_is_kept(self, store: Store) -> None:
        """Several entries are added all together or not at all."""
        store.add(entry("garter"))
        with pytest.raises(Taken):
            store.add(entry("moss"), entry("garter", "other"))
        assert slugs(store) == ["garter"]
        assert len(store.changes(0, 10)) == 1

    @pytest.mark.parametrize("shelf", ["recipe", "profile", "edition"])
    def test_a_slug_may_stand_on_several_shelves(self, store: Store, shelf: Shelf) -> None:
        """Components, recipes, profiles and editions do not share their slugs."""
        store.add(entry("garter"), entry("garter", shelf=shelf, kind=shelf, classes=()))
        assert store.latest(shelf, "garter").slug == "garter"
        assert [change.kind for change in store.changes(0, 10)] == ["component", shelf]
        assert slugs(store) == ["garter"]

    def test_a_revision_follows_the_expected_one(self, store: Store) -> None:
        """The chain grows, and earlier revisions stay as they were."""
        first, second = entry("garter"), entry("garter", "second")
        store.add(first)
        store.revise(second, first.sha256)
        assert [kept.sha256 for kept in store.history("component", "garter")] == [first.sha256, second.sha256]
        assert store.revision("component", "garter", first.sha256).body == first.body

    def test_a_stale_revision_changes_nothing(self, store: Store) -> None:
        """Who has not seen the latest revision is told which it is."""
        first, second = entry("garter"), entry("garter", "second")
        store.add(first)
        store.revise(second, first.sha256)
        with pytest.raises(Stale) as caught:
            store.revise(entry("garter", "third"), first.sha256)
        assert caught.value.current == second.sha256
        assert store.latest("component", "garter").number == 2

    def test_without_an_expected_revision_any_is_followed(self, store: Store) -> None:
        """None stands for whatever is there."""
        store.add(entry("garter"))
        store.revise(entry("garter", "second"), None)
        assert store.latest("component", "garter").number == 2

    @pytest.mark.parametrize("ask", ["latest", "history", "revise", "revision", "object", "token"])
    def test_what_is_not_kept_is_not_found(self, store: Store, ask: str) -> None:
        """Every question about an unknown name raises NotFound."""
        calls = {
            "latest": lambda: store.latest("component", "moss"),
            "history": lambda: store.history("component", "moss"),
            "revise": lambda: store.revise(entry("moss"), None),
            "revision": lambda: store.revision("component", "moss", "0" * 64),
            "object": lambda: store.object("0" * 64),
            "token": lambda: store.token("0" * 64),
        }
        with pytest.raises(NotFound):
            calls[ask]()

    def test_competing_editors_lose_no_update(self, store: Store) -> None:
        """Eight threads that retry on Stale leave one revision for each edit."""
        store.add(entry("garter"))

        def edit(editor: int) -> None:
            done = 0
            while done < 5:
                seen = store.latest("component", "garter").sha256
                try:
                    store.revise(entry("garter", f"{editor}-{done}"), seen)
                    done += 1
                except Stale:
                    continue

        with ThreadPoolExecutor(8) as pool:
            list(pool.map(edit, range(8)))
        history = store.history("component", "garter")
        assert [kept.number for kept in history] == list(range(1, 42))
        assert len({kept.sha256 for kept in history}) == 41


class TestChanges:
    """The history of the whole store."""

    def test_the_sequence_has_no_gaps_even_after_refusals(self, store: Store) -> None:
        """A refused write takes no number."""
        first = entry("garter")
        store.add(first)
        with pytest.raises(Taken):
            store.add(first)
        store.revise(entry("garter", "second"), first.sha256)
        changes = store.changes(0, 10)
        assert [(change.seq, change.event) for change in changes] == [(1, "added"), (2, "revised")]

    def test_changes_come_after_a_number_and_no_more_than_asked(self, store: Store) -> None:
        """A reader goes on where it stopped."""
        assert store.last_change() == 0
        store.add(*(entry(f"body-{number}") for number in range(5)))
        assert store.last_change() == 5
        assert [change.slug for change in store.changes(2, 2)] == ["body-2", "body-3"]
        assert store.changes(5, 2) == ()


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


def test_a_token_is_known_by_its_hash(store: Store) -> None:
    """The holder of a token comes back as kept."""
    holder = Holder("a" * 64, "keeper", "anna", "2026-01-02T03:04:05Z")
    store.put_token(holder)
    assert store.token("a" * 64) == holder


def test_a_store_names_its_form(store: Store) -> None:
    """The last migration has a name."""
    assert store.version()


class TestTextures:
    """Textures are found by their key, at the latest revision."""

    def test_components_of_a_texture_are_found_by_its_key(self, store: Store) -> None:
        """One that has it in any set of rows is found once; others are not."""
        plain, ribbed = TextureKey(0, "plain", "k"), TextureKey(1, "ribbed", "kp")
        store.add(entry("both", textures=(plain, ribbed)), entry("plain", textures=(plain,)), entry("none"))
        assert slugs(store, texture="plain") == ["both", "plain"]
        assert slugs(store, texture="ribbed") == ["both"]
        assert slugs(store, texture="ribbed", kind="border") == []
        assert store.textures() == (
            KeptTexture("both", "body", plain),
            KeptTexture("both", "body", ribbed),
            KeptTexture("plain", "body", plain),
        )

    def test_a_revision_has_its_own_textures(self, store: Store) -> None:
        """What an earlier revision was is not found."""
        store.add(entry("one", textures=(TextureKey(0, "before", "k"),)))
        store.revise(entry("one", "second", textures=(TextureKey(0, "after", "kp"),)), None)
        assert slugs(store, texture="before") == []
        assert [each.texture.key for each in store.textures()] == ["after"]
