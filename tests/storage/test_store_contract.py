"""What every store must do, asked of each store in turn."""

from __future__ import annotations

from concurrent.futures import ThreadPoolExecutor

import pytest

from counterpane.library.errors import NotFound, Stale, Taken
from counterpane.library.ports import Done, Holder, KeptTexture, Once, Shelf, Store, TextureKey
from storage.entries import entry, slugs


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
