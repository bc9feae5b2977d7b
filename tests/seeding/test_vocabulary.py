"""The stitches of the seeds, and what is said of a stitch file that does not hold."""

from __future__ import annotations

from pathlib import Path

import pytest

from counterpane.craft.rows.read import read_row
from counterpane.craft.rows.tree import Work
from counterpane.craft.stitches import Vocabulary
from counterpane.seeding import SeedFault, load_vocabulary

PLAIN = """
[[stitch]]
key = "k"
uses = 1
makes = 1
names.both = ["k", "knit"]
said.both = "knit"
"""


def seeds(folder: Path, text: str) -> Path:
    """Write a folder of seeds with one stitch file."""
    (folder / "stitches").mkdir()
    (folder / "stitches" / "tried.toml").write_text(text, encoding="utf-8")
    return folder


def test_templates_stand_for_families(vocabulary: Vocabulary) -> None:
    """Numbers in the middle of a name are filled in, with what each size uses and makes."""
    sizes = {key: (vocabulary[key].uses, vocabulary[key].makes) for key in ("k5tog", "c10b", "1/3 lpc")}

    assert sizes == {"k5tog": (5, 1), "c10b": (10, 10), "1/3 lpc": (4, 4)}
    assert "knit five together" in vocabulary["k5tog"].names["us"]
    assert vocabulary["c10b"].said["uk"].startswith("slip 5 to a cable needle held at the back")


def test_the_other_side_of_the_other_side_is_the_stitch_itself(vocabulary: Vocabulary) -> None:
    """Turning twice leaves the fabric; ways of working the same decrease come back as the usual one."""
    turned = {key: vocabulary[one.back].back for key, one in vocabulary.stitches.items() if one.back is not None}
    changed = {key: back for key, back in turned.items() if back != key}

    assert changed == {"skp": "ssk", "sk2p": "sssk"}


def test_the_other_side_changes_neither_count_nor_lean(vocabulary: Vocabulary) -> None:
    """A stitch and the one that shows the same fabric from behind use, make and lean alike."""
    for stitch in vocabulary.stitches.values():
        if stitch.back is not None:
            back = vocabulary[stitch.back]
            assert (back.uses, back.makes, back.opens) == (stitch.uses, stitch.makes, stitch.opens), stitch.key
            assert back.lean == stitch.lean, stitch.key


def test_a_mirror_image_leans_the_other_way(vocabulary: Vocabulary) -> None:
    """Left becomes right and right left; what leans nowhere or to the centre stays."""
    other = {"left": "right", "right": "left", "centre": "centre", None: None}
    for stitch in vocabulary.stitches.values():
        if stitch.mirror is not None:
            assert vocabulary[stitch.mirror].lean == other[stitch.lean], stitch.key
            assert vocabulary[stitch.mirror].uses == stitch.uses, stitch.key


def test_every_name_is_read_as_its_stitch(vocabulary: Vocabulary) -> None:
    """The reader finds each name of the vocabulary, save the one with a meaning of its own in each terminology."""
    lost = {
        name
        for name, keys in vocabulary.by_name.items()
        if len(keys) == 1 and not vocabulary[keys[0]].ambiguous and not _reads(name, keys[0], vocabulary)
    }

    assert lost == set()
    assert vocabulary.by_name["yf"] == ("wyif", "yo")


def _reads(name: str, key: str, vocabulary: Vocabulary) -> bool:
    read = read_row(f"{name}, k1", vocabulary)
    first = read.parts[0] if read.parts else None
    return read.readable and isinstance(first, Work) and first.stitch == key


def test_a_word_of_two_meanings_lists_the_stitches_it_may_be(vocabulary: Vocabulary) -> None:
    """An increase that is not defined may be worked into a stitch or between two."""
    assert vocabulary["inc"].ambiguous == ("kfb", "m1")
    assert [key for key, stitch in vocabulary.stitches.items() if stitch.ambiguous] == ["dec", "inc", "k1b"]


@pytest.mark.parametrize(
    ("old", "new", "said"),
    [
        ("uses = 1", "use = 1", "seeds/stitches/tried.toml: stitch[0].use: unknown key. Probably meant: uses."),
        ("uses = 1\n", "", "seeds/stitches/tried.toml: stitch[0].uses: missing. Add this key."),
        ("uses = 1", "uses = 1.5", "seeds/stitches/tried.toml: stitch[0].uses: 1.5 where a whole number belongs."),
        ("uses = 1", "uses = true", "seeds/stitches/tried.toml: stitch[0].uses: True where a whole number belongs."),
        ("uses = 1", 'uses = "n"', "stitch[0].uses: 'n' is no sum of []."),
        ('["k", "knit"]', '["k  k"]', "stitch[0].names: 'k  k' is not written with single spaces."),
        ("names.both", "names.usa", "stitch[0].names.usa: unknown terminology. Probably meant: us."),
        ("names.both", "names.us", "stitch[0].names: a terminology has no name."),
        ("said.both", "said.uk", "stitch[0].said: a terminology has no description."),
        ('"knit"]', '"knit {n}"]', "'knit {n}' has a brace without a value."),
        ("makes = 1", 'makes = 1\nback = "q"', "seeds/stitches/tried.toml: k.back: no stitch 'q'."),
        ("makes = 1", 'makes = 1\nlean = "up"', "stitch[0].lean: 'up' is none of 'left', 'right', 'centre'."),
        ("makes = 1", "makes = ", "seeds/stitches/tried.toml: not readable as TOML"),
    ],
)
def test_a_stitch_file_that_does_not_hold_says_where_and_what_next(
    old: str, new: str, said: str, tmp_path: Path
) -> None:
    """Each fault names the file, the key and the next step."""
    with pytest.raises(SeedFault) as fault:
        load_vocabulary(seeds(tmp_path, PLAIN.replace(old, new, 1)))

    assert said in str(fault.value)
    assert fault.value.step


def test_a_key_stands_once(tmp_path: Path) -> None:
    """Two stitches of one key are refused."""
    with pytest.raises(SeedFault, match=r"k: the key is taken in seeds/stitches/tried.toml"):
        load_vocabulary(seeds(tmp_path, PLAIN + PLAIN))


def test_pairs_are_two_numbers(tmp_path: Path) -> None:
    """A template over pairs with three numbers is refused."""
    with pytest.raises(SeedFault, match=r"stitch\[0\].pairs: a pair is two whole numbers"):
        load_vocabulary(seeds(tmp_path, PLAIN.replace("makes = 1", "makes = 1\npairs = [[1, 2, 3]]")))


def test_a_file_that_is_no_utf_8_is_a_fault(tmp_path: Path) -> None:
    """Bytes of another encoding are said to be unreadable."""
    (seeds(tmp_path, "") / "stitches" / "tried.toml").write_bytes(b"\xff\x00")
    with pytest.raises(SeedFault, match="not readable as TOML"):
        load_vocabulary(tmp_path)
