"""seeds/components/<kind>/<slug>.toml → Component, through the same proof as a component that somebody sends."""

from __future__ import annotations

from collections.abc import Callable, Collection, Iterator, Mapping
from functools import cache
from pathlib import Path

from counterpane.craft.component import Component, prove
from counterpane.craft.stitches import Vocabulary
from counterpane.seeding.faults import SeedFault, nearest
from counterpane.seeding.roots import seeds_root, toml_files
from counterpane.seeding.shape import fill, read_toml
from counterpane.seeding.sources import load_sources
from counterpane.seeding.vocabulary import load_vocabulary

EXAMPLES = 2
"""Worked examples that a starter shows at least; house figure."""


def load_components(root: Path | None = None) -> tuple[Component, ...]:
    """Load the starters, in order of kind folder and slug; SeedFault at the first that does not hold or prove."""
    return _load(root or seeds_root())


def read_components(root: Path | None = None) -> Iterator[Component]:
    """Read the starters in the same order, of which the words alone are wanted: whether they hold is not looked at."""
    return (
        fill(Component, read_toml(path, file), file) for path, file in toml_files(root or seeds_root(), "components")
    )


def load_component(slug: str, root: Path | None = None) -> Component:
    """Load one starter and no other; KeyError where there is no file of this slug, SeedFault where it does not hold."""
    return _one(slug, root or seeds_root())


def shipped(root: Path | None = None) -> Mapping[str, str]:
    """Return the kind of each starter by its slug, as the names of files and folders tell; nothing is read."""
    return {slug: path.parent.name for slug, (path, _) in _files(root or seeds_root()).items()}


@cache
def _one(slug: str, root: Path) -> Component:
    path, file = _files(root)[slug]
    return _read(path, file, root)


@cache
def _files(root: Path) -> Mapping[str, tuple[Path, str]]:
    return {path.stem: (path, file) for path, file in toml_files(root, "components")}


def _read(path: Path, file: str, root: Path) -> Component:
    component = fill(Component, read_toml(path, file), file)
    _check(component, path, file, load_vocabulary(root), load_sources(root))
    return component


@cache
def _load(root: Path) -> tuple[Component, ...]:
    found: dict[str, tuple[str, Component]] = {}
    for path, file in toml_files(root, "components"):
        component = _read(path, file, root)
        if component.slug in found:
            raise SeedFault(file, "slug", f"{component.slug!r} is taken in {found[component.slug][0]}", "Rename one.")
        found[component.slug] = (file, component)
    return tuple(component for _, component in found.values())


def _check(component: Component, path: Path, file: str, vocabulary: Vocabulary, sources: Collection[str]) -> None:
    """Raise the first fault of a component: its place among the files, what it must say, and whether it proves."""
    if (component.slug, component.kind) != (path.stem, path.parent.name):
        place = f"{component.kind}/{component.slug}.toml"
        raise SeedFault(file, "slug", "kind and slug do not name the file", f"Move it to seeds/components/{place}.")
    if component.provenance.source not in sources:
        missing = component.provenance.source
        raise SeedFault(file, "provenance.source", f"no source {missing!r} in seeds/sources", nearest(missing, sources))
    for key, lacks, step in _MUST_SAY:
        if lacks(component):
            raise SeedFault(file, key, "missing", step)
    for problem in prove(component, vocabulary):
        place = f" (line {problem.place.line}, column {problem.place.column} of the rows)" if problem.place else ""
        raise SeedFault(file, problem.pointer, problem.message.removesuffix(".") + place, problem.step)


def _slips(component: Component) -> bool:
    return component.kind == "selvedge" and any("sl " in version.rows for version in component.versions)


_MUST_SAY: tuple[tuple[str, Callable[[Component], bool], str], ...] = (
    ("examples", lambda one: len(one.examples) < EXAMPLES, f"Give at least {EXAMPLES} worked examples with counts."),
    ("across_corner", lambda one: one.kind == "border" and one.across_corner is None, "Say whether it goes on there."),
    (
        "slipped_edge",
        lambda one: _slips(one) and one.slipped_edge is None,
        "Say how it is slipped and where the yarn is.",
    ),
    ("operation.turn", lambda one: _cast_on_lacks(one, "turn"), "Say whether one turns before row 1."),
    ("operation.faces_row_1", lambda one: _cast_on_lacks(one, "faces_row_1"), "Say which side of it faces row 1."),
)


def _cast_on_lacks(component: Component, field: str) -> bool:
    return component.kind == "cast-on" and getattr(component.operation, field, None) is None
