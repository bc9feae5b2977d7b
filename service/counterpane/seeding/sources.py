"""seeds/sources/*.toml: where stitches and components come from, one file a source, named after its slug."""

from __future__ import annotations

from dataclasses import dataclass
from functools import cache
from pathlib import Path

from counterpane.seeding.faults import SeedFault
from counterpane.seeding.roots import seeds_root, toml_files
from counterpane.seeding.shape import fill, read_toml


@dataclass(frozen=True, slots=True)
class Source:
    """A book, a page or a custom that something comes from; `public_domain` None is "not known"."""

    slug: str
    title: str
    kind: str
    note: str
    author: str | None = None
    year: int | None = None
    public_domain: bool | None = None


def load_sources(root: Path | None = None) -> dict[str, Source]:
    """Load the sources by slug; SeedFault where a file does not hold."""
    return dict(_load(root or seeds_root()))


@cache
def _load(root: Path) -> dict[str, Source]:
    return {source.slug: source for source in (_source(path, file) for path, file in toml_files(root, "sources"))}


def _source(path: Path, file: str) -> Source:
    source = fill(Source, read_toml(path, file), file)
    if source.slug != path.stem:
        raise SeedFault(file, "slug", f"{source.slug!r} is not the name of the file", "Give both the same name.")
    return source
