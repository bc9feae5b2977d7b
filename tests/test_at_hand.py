"""What is worked out once for each version of the program: the same as worked out anew, and never believed blindly."""

from __future__ import annotations

import shutil
from pathlib import Path

import pytest

from counterpane import at_hand
from counterpane.at_hand import LIBRARY, answer_at_hand, folder, open_starters
from counterpane.library.ports import Store
from counterpane.library.sharing.dumps import dump
from counterpane.seeding import seeds_root
from counterpane.wiring import open_library


@pytest.fixture(autouse=True)
def cache(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Path:
    """Keep what is at hand in a folder of the test's own."""
    monkeypatch.setenv(at_hand.CACHE, str(tmp_path))
    return tmp_path


def texts(store: Store) -> list[object]:
    """Return the contents that a store holds."""
    return [record.row["content"] for record in store.records() if record.sort == "object"]


def test_the_library_at_hand_holds_what_was_proved() -> None:
    """The second time the library is the one that was proved the first time, letter for letter."""
    first = b"".join(dump(open_starters().store))
    assert b"".join(dump(open_starters().store)) == first
    assert (folder() / LIBRARY).read_bytes() == first


def test_the_library_at_hand_holds_all_starters() -> None:
    """It knows the textures of all bodies and borders as a library does that is made anew."""
    stores = (open_library().store, open_starters().store, open_starters().store)
    anew, first, second = ({each.slug: each.texture for each in store.textures()} for store in stores)
    assert anew == first == second


def test_a_library_that_was_changed_is_proved_anew() -> None:
    """Words put into the file by another hand are not served: the sums tell, and the parts are proved again."""
    open_starters()
    path = folder() / LIBRARY
    whole = path.read_bytes()
    path.write_bytes(whole.replace(b"purl", b"knit", 1))
    assert texts(open_starters().store) == texts(open_library().store)
    assert path.read_bytes().count(b"purl") == whole.count(b"purl")


def test_an_answer_is_worked_out_once() -> None:
    """What was answered is read the next time, and worked out again where the file was changed."""
    asked: list[str] = []

    def work() -> dict[str, list[int]]:
        asked.append("asked")
        return {"counts": [3, 9]}

    assert answer_at_hand("counts", work) == answer_at_hand("counts", work) == {"counts": [3, 9]}
    assert len(asked) == 1
    path = folder() / "counts.json"
    path.write_bytes(path.read_bytes().replace(b"9", b"8"))
    assert answer_at_hand("counts", work) == {"counts": [3, 9]}
    assert len(asked) == 2


def test_one_letter_changed_in_a_seed_makes_another_version(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    """Nothing at hand outlives a change of what it follows from."""
    seeds = tmp_path / "seeds"
    shutil.copytree(seeds_root(), seeds)
    monkeypatch.setattr(at_hand, "seeds_root", lambda: seeds)
    before = at_hand.version.__wrapped__()
    waffle = seeds / "components" / "body" / "waffle.toml"
    waffle.write_text(waffle.read_text("utf-8").replace("p", "q", 1), "utf-8")
    assert at_hand.version.__wrapped__() != before


def test_what_other_versions_kept_is_removed(cache: Path) -> None:
    """The folder holds one version, so that it does not grow; what has no version's name is left alone."""
    for name in ("0" * 64, "of-somebody-else"):
        (cache / "counterpane" / name).mkdir(parents=True)
    open_starters()
    assert {each.name for each in (cache / "counterpane").iterdir()} == {at_hand.version(), "of-somebody-else"}


def test_without_a_folder_all_is_worked_out(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    """Where nothing can be kept, the answers are the same."""
    (tmp_path / "file").touch()
    monkeypatch.setenv(at_hand.CACHE, str(tmp_path / "file"))
    assert open_starters().store.latest("component", "waffle").slug == "waffle"
    assert answer_at_hand("counts", lambda: [3]) == [3]
