"""The starters: each loads, proves, cites a source and shows its examples; and what is said of one that does not."""

from __future__ import annotations

import shutil
from collections import Counter
from collections.abc import Mapping
from pathlib import Path

import pytest

from counterpane.craft.component import Component, derive
from counterpane.craft.stitches import Vocabulary
from counterpane.seeding import SeedFault, load_component, load_components, load_sources, seeds_root, shipped

LEAST = {"cast-on": 6, "border": 20, "selvedge": 5, "body": 60, "bind-off": 6}
ALWAYS = {
    "long-tail", "cable-cast-on", "garter-border", "seed-stitch-border", "slipped-selvedge", "garter",
    "stocking-stitch", "seed-stitch", "moss-stitch", "basket-weave", "waffle", "plain-bind-off", "stretchy-bind-off",
}  # fmt: skip


def test_there_are_starters_of_every_kind(starters: Mapping[str, Component]) -> None:
    """At least so many of each kind ship with the library, and some always do."""
    kinds = Counter(component.kind for component in starters.values())

    assert all(kinds[kind] >= least for kind, least in LEAST.items())
    assert starters.keys() >= ALWAYS
    assert sum(kinds.values()) == len(load_components())


def test_every_starter_stands_in_the_file_of_its_kind_and_slug(starters: Mapping[str, Component]) -> None:
    """The path of a file is the identity of its component."""
    files = {(path.parent.name, path.stem) for path in (seeds_root() / "components").rglob("*.toml")}

    assert files == {(component.kind, slug) for slug, component in starters.items()}


def test_every_starter_cites_a_source_and_a_licence(starters: Mapping[str, Component]) -> None:
    """A starter comes from a book in the public domain, with its year and place, or from common practice."""
    sources = load_sources()
    for component in starters.values():
        origin = component.provenance
        source = sources[origin.source]

        assert (origin.licence, origin.author) == ("CC0-1.0", "counterpane-starters")
        assert source.public_domain
        assert origin.year == source.year
        assert (origin.where is None) == (source.slug == "common-practice")


def test_every_starter_in_rows_repeats_and_shows_its_counts(
    starters: Mapping[str, Component], vocabulary: Vocabulary
) -> None:
    """Rows return to their start, and two examples at least stand beside them, the smallest count or a wider one."""
    for component in starters.values():
        for version in derive(component, vocabulary).versions:
            assert version.drift == 0, component.slug
            assert not version.chain.suspicious, component.slug
        assert len(component.examples) >= 2, component.slug
        shown = {example.version for example in component.examples}
        assert shown == set(range(max(1, len(component.versions)))), component.slug


def test_fibre_is_not_known_before_there_is_a_yarn(starters: Mapping[str, Component]) -> None:
    """No structure decides what fibre it is knitted in."""
    assert {component.safety.fibre for component in starters.values()} == {"not known"}


def test_starters_say_what_their_kind_must_say(starters: Mapping[str, Component]) -> None:
    """A cast-on says the turn, a border the corner, a slipped edge its manner and the place of the yarn."""
    for component in starters.values():
        if component.operation and component.kind == "cast-on":
            assert component.operation.turn is not None
            assert component.operation.faces_row_1
        assert (component.across_corner is not None) == (component.kind == "border")
        assert component.slipped_edge is None or component.kind == "selvedge"


@pytest.fixture
def folder(tmp_path: Path) -> Path:
    """Return a folder with the stitches and sources of the seeds, and two components."""
    for name in ("stitches", "sources"):
        shutil.copytree(seeds_root() / name, tmp_path / name)
    for path in ("border/seed-stitch-border.toml", "selvedge/slipped-selvedge.toml", "cast-on/long-tail.toml"):
        (tmp_path / "components" / path).parent.mkdir(parents=True)
        shutil.copy(seeds_root() / "components" / path, tmp_path / "components" / path)
    return tmp_path


def change(folder: Path, path: str, old: str, new: str) -> None:
    """Change a text in a file of the folder, where it must stand."""
    file = folder / "components" / path
    text = file.read_text(encoding="utf-8")
    assert old in text
    file.write_text(text.replace(old, new, 1), encoding="utf-8")


BORDER = "border/seed-stitch-border.toml"


@pytest.mark.parametrize(
    ("path", "old", "new", "said"),
    [
        (BORDER, "summary", "sumary", f"seeds/components/{BORDER}: sumary: unknown key. Probably meant: summary."),
        (BORDER, 'kind = "border"', 'kind = "boarder"', "kind: 'boarder' is none of 'cast-on', 'border'"),
        (BORDER, "across_corner = true", 'across_corner = "yes"', "across_corner: 'yes' where true or false belongs."),
        (BORDER, "across_corner = true\n", "", "across_corner: missing. Say whether it goes on there."),
        (BORDER, "seed-stitch-border", "seed-border", "slug: kind and slug do not name the file. Move it to"),
        (BORDER, "common-practice", "common-practise", "provenance.source: no source 'common-practise'"),
        (BORDER, "after = [5, 5]", "after = [5, 6]", "/examples/0/after: The counts after the rows are 5, 5"),
        (BORDER, "k1, *p1, k1;", "k1, *pp1, k1;",
         "/versions/0/rows: 'pp1' cannot be read: unknown term (line 1, column 18 of the rows)"),
        (BORDER, 'openings = "none"', 'openings = { value = 1, unit = "x" }', "safety.openings.value: 1 where a text"),
        (BORDER, 'openings = "none"', 'openings = "nothing"', "openings: 'nothing' is none of 'none', 'not known'."),
        ("selvedge/slipped-selvedge.toml", "slipped_edge", "# slipped_edge", "slipped_edge: missing."),
        ("selvedge/slipped-selvedge.toml", "slipped_edge = {", "slipped_edge = 5 # {", "slipped_edge: 5 where a table"),
        ("cast-on/long-tail.toml", "turn = true", "", "operation.turn: missing."),
        ("cast-on/long-tail.toml", 'faces_row_1 = "bumps"', "", "operation.faces_row_1: missing."),
        ("cast-on/long-tail.toml", "[[examples]]\nstitches = 20\nafter = []", "", "examples: missing. Give at least 2"),
        ("cast-on/long-tail.toml", "steps = [", "steps = 5 # [", "not readable as TOML"),
    ],
)  # fmt: skip
def test_a_component_that_does_not_hold_says_where_and_what_next(
    path: str, old: str, new: str, said: str, folder: Path
) -> None:
    """Each fault names the file, the key, and the next step or the nearest name."""
    change(folder, path, old, new)
    with pytest.raises(SeedFault) as fault:
        load_components(folder)

    assert said in str(fault.value)


def test_one_starter_is_loaded_without_the_others(folder: Path) -> None:
    """It is proved as all of them are; the faults of another file are not met."""
    change(folder, BORDER, "k1, *p1, k1;", "k1, *pp1, k1;")

    assert shipped(folder)["long-tail"] == "cast-on"
    assert load_component("long-tail", folder) == load_component("long-tail")
    with pytest.raises(SeedFault, match="'pp1' cannot be read"):
        load_component("seed-stitch-border", folder)
    with pytest.raises(KeyError):
        load_component("nothing", folder)


def test_a_slug_stands_once_across_kinds(folder: Path) -> None:
    """The same slug in another kind's folder is refused."""
    shutil.copy(folder / "components" / BORDER, folder / "components" / "selvedge" / "seed-stitch-border.toml")
    change(folder, "selvedge/seed-stitch-border.toml", 'kind = "border"', 'kind = "selvedge"')
    with pytest.raises(SeedFault, match="'seed-stitch-border' is taken in seeds/components/border"):
        load_components(folder)


def test_a_source_bears_the_name_of_its_file(folder: Path) -> None:
    """A source under another file name is refused."""
    (folder / "sources" / "mee-1846.toml").rename(folder / "sources" / "mee.toml")
    with pytest.raises(SeedFault, match="'mee-1846' is not the name of the file"):
        load_sources(folder)


def test_missing_seeds_are_said_to_be_missing(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    """Without a folder of seeds beside the package or in a checkout there is a fault with the next step."""
    monkeypatch.setattr("counterpane.seeding.roots._PACKAGE", tmp_path / "service" / "counterpane")
    with pytest.raises(SeedFault, match=r"no folder of seeds is there\. Install counterpane again"):
        seeds_root()
