"""The house styles load, cite what they are, and a style of a person's own is refused with its place and next step."""

from __future__ import annotations

from pathlib import Path

import pytest

from counterpane.craft.stitches import Vocabulary
from counterpane.seeding import SeedFault
from counterpane.seeding.styles import load_style, load_styles

OWN = 'slug = "own"\nname = "Own"\nsummary = "Ours."\nbasis = "house"\n'


def test_the_styles_that_ship_are_the_house_s_own_and_differ() -> None:
    """Each says that it is a house style, and no two print the same."""
    styles = load_styles()
    assert list(styles) == ["counterpane", "plain-words", "pocket-card"]
    assert {style.basis for style in styles.values()} == {"house"}
    assert len({(style.terms, style.row_label, style.side, style.count) for style in styles.values()}) == len(styles)


def test_a_style_of_a_person_s_own_is_read_and_may_leave_most_things_open(
    tmp_path: Path, vocabulary: Vocabulary
) -> None:
    """What is left out is as the designer likes."""
    (tmp_path / "own.toml").write_text(OWN + 'count = "[95 sts]"\n')
    style = load_style(tmp_path / "own.toml", vocabulary)
    assert (style.slug, style.count, style.side) == ("own", "[95 sts]", None)


@pytest.mark.parametrize(
    ("line", "said"),
    [
        ('cuont = "(95 sts)"', "cuont: unknown key. Probably meant: count."),
        ('count = "{95 sts}"', "count: '{95 sts}' is none of '(95 sts)', '[95 sts]'"),
        ("count = 95", "count: 95 is none of"),
        ("[abbreviations]\nk2tgo = 'k2tog'", "abbreviations.k2tgo: there is no such stitch. Probably meant: k2tog."),
        ("[abbreviations]\nk2tog = 'k2to'", "abbreviations.k2tog: 'k2to' is not a name of this stitch."),
        ("[abbreviations]\nk2tog = 2", "abbreviations.k2tog: 2 where a text in quotes belongs."),
        ('source = "x"\nbasis = "house"', "not readable as TOML (Cannot overwrite a value (at line 6"),
    ],
)
def test_a_style_that_does_not_hold_is_refused_with_place_and_next_step(
    line: str, said: str, tmp_path: Path, vocabulary: Vocabulary
) -> None:
    """The message names the file, the key and the nearest that is known."""
    path = tmp_path / "own.toml"
    path.write_text(f"{OWN}{line}\n")
    with pytest.raises(SeedFault) as caught:
        load_style(path, vocabulary)
    assert str(path) in str(caught.value) and said in str(caught.value)


def test_a_published_style_names_its_source(tmp_path: Path, vocabulary: Vocabulary) -> None:
    """What is not the house's own comes from somewhere."""
    (tmp_path / "own.toml").write_text(OWN.replace('"house"', '"published"'))
    with pytest.raises(SeedFault, match=r"source: missing\. Name where"):
        load_style(tmp_path / "own.toml", vocabulary)
