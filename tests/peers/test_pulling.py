"""Two libraries that are served for real: what one wrote comes to the other, whole, proved, never over work."""

from __future__ import annotations

import random
from collections.abc import Iterator
from dataclasses import dataclass
from pathlib import Path

import orjson
import pytest

from counterpane.library.editions import editions
from counterpane.library.errors import NotFound, NotTaken, PeerRefused
from counterpane.library.keeping import recipes
from counterpane.library.keeping.objects import canonical, digest
from counterpane.library.keeping.record import Move
from counterpane.library.parts import components
from counterpane.library.ports import Change, Wanted
from counterpane.library.sharing.dumps import dump
from counterpane.library.sharing.pulling import Pulling
from counterpane.peers import read
from counterpane.seeding.recipes import load_recipes
from peers.libraries import (
    FIRST,
    SEEDS,
    FailingPeer,
    Library,
    LocalPeer,
    asked,
    body_of,
    edit,
    furnish,
    keep,
    killed_pulls,
    pull,
    served,
)


@pytest.fixture
def pair(tmp_path: Path) -> Iterator[tuple[Library, Library]]:
    """Yield a library with the parts of a blanket and an empty one in a file, both served."""
    with served() as one, served(tmp_path / "two.db") as two:
        furnish(one)
        yield one, two


def chain(library: Library, slug: str) -> list[str]:
    """Return the hashes of a component's chain."""
    return [kept.sha256 for kept in library.services.store.history("component", slug)]


def test_what_is_pulled_is_marked_as_mirrored(pair: tuple[Library, Library]) -> None:
    """It is the same revision by its hash, says from whom it is, and is found by its state."""
    one, two = pair
    pull(two, one)
    told = body_of(two, "waffle")
    assert (told["status"], told["sha256"]) == ("mirrored", body_of(one, "waffle")["sha256"])
    assert told["mirrored_from"] == one.address.removeprefix("http://")
    assert len(two.services.store.page(Wanted("component", status="mirrored")).cards) == len(FIRST)
    assert two.held() == one.held()


def test_a_second_pull_moves_nothing(pair: tuple[Library, Library]) -> None:
    """No object is fetched, and not a byte of the library changes."""
    one, two = pair
    pull(two, one)
    before = list(dump(two.services.store))
    with asked(one) as peer:
        watched = FailingPeer(peer, 10**6)
        assert list(Pulling(two.services, watched, read).run()) == []
    assert (watched.fetched, list(dump(two.services.store))) == ([], before)


@pytest.mark.parametrize("seed", range(3))
def test_after_random_edits_and_killed_transfers_both_hold_the_same(tmp_path: Path, seed: int) -> None:
    """Both were edited, each pulls from the other with every transfer broken off; own work stays as it was."""
    chance = random.Random(seed)
    with served() as one, served(tmp_path / "two.db") as two:
        furnish(one)
        furnish(two)
        for _ in range(8):
            edit(one, chance)
            edit(two, chance)
        own = {slug: chain(two, slug) for slug in FIRST}
        with asked(one) as first, asked(two) as second:
            broken = killed_pulls(two, first, chance) + killed_pulls(one, second, chance)
        assert broken
        assert one.held() == two.held()
        assert {slug: chain(two, slug) for slug in FIRST} == own
        assert [each.became for each in (*pull(two, one), *pull(one, two)) if each.became != "held"] == []
        assert pull(two, one) == pull(one, two) == []


def test_a_history_is_followed_line_by_line_and_goes_on(pair: tuple[Library, Library]) -> None:
    """A revision made after the first pull is the next one of the copy."""
    one, two = pair
    pull(two, one)
    keep(components.COMPONENTS, one.services, SEEDS["waffle"] | {"summary": "Changed."})
    assert [(each.change.slug, each.became) for each in pull(two, one)] == [("waffle", "revised")]
    assert chain(two, "waffle") == chain(one, "waffle")


def test_recipes_and_editions_are_proved_and_read_as_they_did(pair: tuple[Library, Library]) -> None:
    """A recipe of gauges that are no whole numbers, and its published pattern in both terms."""
    one, two = pair
    recipes.RECIPES.add(one.services, next(each for each in load_recipes() if each["slug"] == "first-frost"), "anna")
    first = editions.publish(one.services, "first-frost", {"date": "2026-11-26"}, "anna")
    assert [each.became for each in pull(two, one)][-2:] == ["added", "added"]
    kept = editions.find(two.services, "first-frost", 1)
    assert kept.sha256 == first.sha256
    whole = editions.content_of(two.services, kept)
    assert whole["patterns"] == editions.content_of(one.services, first)["patterns"]


class TestOwnWork:
    """What was written here is never written over."""

    def test_a_name_in_use_for_something_else_is_kept_apart_and_told(self, pair: tuple[Library, Library]) -> None:
        """The one here stays, the other can be had by its hash."""
        one, two = pair
        components.add(two.services, SEEDS["waffle"] | {"summary": "Ours."}, "bea")
        before, theirs = chain(two, "waffle"), chain(one, "waffle")[0]
        became = {each.change.slug: each.became for each in pull(two, one)}
        assert (became["waffle"], became["garter"]) == ("apart", "added")
        assert chain(two, "waffle") == before
        assert [(each.slug, each.sha256) for each in two.services.store.apart()] == [("waffle", theirs)]
        assert orjson.loads(two.services.store.object(theirs))["slug"] == "waffle"

    def test_a_copy_that_is_revised_here_is_work_of_ones_own(self, pair: tuple[Library, Library]) -> None:
        """It is a draft, and what the peer writes next is kept apart."""
        one, two = pair
        pull(two, one)
        keep(components.COMPONENTS, two.services, SEEDS["waffle"] | {"summary": "Ours."})
        assert body_of(two, "waffle")["status"] == "draft"
        keep(components.COMPONENTS, one.services, SEEDS["waffle"] | {"summary": "Theirs."})
        assert [each.became for each in pull(two, one)] == ["apart"]
        assert body_of(two, "waffle")["summary"] == "Ours."

    def test_the_stricter_safety_note_wins(self, pair: tuple[Library, Library]) -> None:
        """It is told with the one here and counts in searches, after the next revision too; a weaker one is not."""
        one, two = pair
        measured = {"by": "anna", "on": "2026-01-01", "yarn": "wool", "gauge": "20", "wash": "by hand"}
        keep(components.COMPONENTS, one.services, SEEDS["waffle"] | {"measured": [{"mm": "7.2", **measured}]})
        notes = SEEDS["waffle"]["safety"] | {"fibre": "none"}
        ours = SEEDS["waffle"] | {"measured": [{"mm": "3", **measured}], "safety": notes}
        components.add(two.services, ours, "bea")
        pull(two, one)
        found = {(each["note"], str(each["value"])) for each in body_of(two, "waffle")["stricter_notes"]}
        assert found == {("fibre", "not known"), ("measured", "{'value': '7.2', 'unit': 'mm'}")}
        under = Wanted("component", openings_under_mm=5)
        assert two.services.store.page(under).cards == ()
        keep(components.COMPONENTS, two.services, ours | {"summary": "Again."})
        assert (two.services.store.page(under).cards, "stricter_notes" in body_of(two, "waffle")) == ((), True)


class TestRefusals:
    """What is not as it should be is named, and what came before it is kept."""

    @pytest.mark.parametrize("byte", [0, 40, -2])
    def test_a_flipped_byte_is_refused_and_named(self, pair: tuple[Library, Library], byte: int) -> None:
        """The next pull begins there; once it is whole again both hold the same."""
        one, two = pair
        flipped = chain(one, "waffle")[0]
        objects = one.services.store._objects  # type: ignore[attr-defined]
        whole = objects[flipped]
        bad = bytearray(whole)
        bad[byte] ^= 1
        objects[flipped] = bytes(bad)
        with pytest.raises(NotTaken, match=flipped):
            pull(two, one)
        assert two.held() == {each for each in one.held() if FIRST.index(each[1]) < FIRST.index("waffle")}
        objects[flipped] = whole
        pull(two, one)
        assert two.held() == one.held()

    def test_one_that_stays_broken_can_be_passed_and_is_noted(self, pair: tuple[Library, Library]) -> None:
        """The rest goes on."""
        one, two = pair
        flipped = chain(one, "waffle")[0]
        one.services.store._objects[flipped] = b"{}"  # type: ignore[attr-defined]
        became = {each.change.slug: each.became for each in pull(two, one, past={flipped})}
        assert (became["waffle"], became["basket-weave"]) == ("passed", "added")
        assert [(each.sha256, each.why) for each in two.services.store.apart()] == [(flipped, "passed by the keeper")]

    @pytest.mark.parametrize(
        "content",
        [
            SEEDS["waffle"] | {"examples": [{"stitches": 9, "after": [8], "version": 0}]},
            SEEDS["waffle"] | {"kind": "blanket"},
            SEEDS["waffle"] | {"more": 1},
            {"slug": "waffle"},
        ],
    )
    def test_what_does_not_prove_here_is_refused(self, pair: tuple[Library, Library], content: dict) -> None:
        """A peer that proves nothing, or other things, is not believed; the hash alone is no proof."""
        _, two = pair
        peer = Forger(content)
        with pytest.raises(NotTaken, match=f"{peer.sha256}: it does not prove here"):
            list(Pulling(two.services, peer, read).run())
        assert two.held() == set()

    def test_a_history_with_a_gap_is_refused(self, pair: tuple[Library, Library]) -> None:
        """A number that is missing may have been a withdrawal."""
        _, two = pair
        with pytest.raises(PeerRefused, match="has no number 1"):
            list(Pulling(two.services, Forger(SEEDS["waffle"], 2), read).run())

    def test_another_history_at_the_same_address_is_refused_unless_read_anew(self, tmp_path: Path) -> None:
        """Read from its beginning, what is held stays and what is not is taken."""
        with served() as one, served() as other, served() as two:
            furnish(one)
            components.add(other.services, SEEDS["garter"] | {"slug": "another"}, "anna")
            list(Pulling(two.services, LocalPeer(one.services, "peer"), read).run())
            moved = LocalPeer(other.services, "peer")
            with pytest.raises(PeerRefused, match="another history"):
                list(Pulling(two.services, moved, read).run())
            done = list(Pulling(two.services, moved, read, anew=True).run())
            assert [each.became for each in done] == ["added"]
            assert list(Pulling(two.services, moved, read).run()) == []


def test_a_withdrawal_is_followed(pair: tuple[Library, Library]) -> None:
    """The copy stays, with that state; work of one's own is not touched."""
    one, two = pair
    keep(components.COMPONENTS, two.services, SEEDS["garter"] | {"summary": "Ours."})
    pull(two, one)
    for slug in ("waffle", "garter"):
        latest = one.services.store.latest("component", slug)
        words = ("withdrawn", latest.at, "anna", "by-its-author", "Mine.")
        move = Move("component", slug, latest.sha256, latest.status, *words)
        one.services.store.move(move, lambda body: body)
    assert [(each.change.slug, each.became) for each in pull(two, one)] == [("waffle", "withdrawn"), ("garter", "held")]
    assert two.services.store.history("component", "waffle")[-1].status == "withdrawn"
    assert body_of(two, "garter")["status"] == "draft"
    assert two.services.store.changes(0, 100)[-1].event == "withdrawn"


def test_what_was_withdrawn_before_a_first_pull_is_passed_over(pair: tuple[Library, Library]) -> None:
    """Its bytes are gone at the peer: nothing of it comes, and all else does."""
    one, two = pair
    before = one.services.store.latest("component", "waffle")
    move = Move(
        "component", "waffle", before.sha256, before.status, "withdrawn", before.at, "anna", "by-its-author", "Mine."
    )
    one.services.store.move(move, lambda body: body)
    became = {each.change.slug: each.became for each in pull(two, one) if each.change.event == "added"}
    assert (became["waffle"], became["garter"]) == ("held", "added")
    with pytest.raises(NotFound):
        two.services.store.latest("component", "waffle")


@dataclass
class Forger:
    """A peer that sends what nobody proved, under its true hash."""

    content: dict
    seq: int = 1
    name: str = "forger"

    @property
    def data(self) -> bytes:
        """The canonical bytes."""
        return canonical(self.content)

    @property
    def sha256(self) -> str:
        """Their hash."""
        return digest(self.data)

    def changes(self, after: int) -> Iterator[Change]:
        """Give one line."""
        if after < self.seq:
            yield Change(self.seq, "2026-01-01T00:00:00Z", "component", "waffle", self.sha256, "added")

    def object(self, change: Change) -> bytes:
        """Return the bytes."""
        return self.data
