"""seeds/styles/<slug>.toml → house styles; and a style from a file of a person's own, through the same reader."""

from __future__ import annotations

from collections.abc import Mapping
from functools import cache
from pathlib import Path

from counterpane.craft.stitches import Vocabulary
from counterpane.craft.styles import Style
from counterpane.seeding.faults import SeedFault, nearest
from counterpane.seeding.roots import seeds_root, toml_files
from counterpane.seeding.shape import fill, read_toml
from counterpane.seeding.vocabulary import load_vocabulary


def load_styles(root: Path | None = None) -> Mapping[str, Style]:
    """Load the styles by slug; SeedFault at the first that does not hold."""
    return _load(root or seeds_root())


def load_style(path: Path, vocabulary: Vocabulary) -> Style:
    """Load the style of one file; SeedFault where it does not hold, OSError where it cannot be read."""
    return _style(path, str(path), vocabulary)


@cache
def _load(root: Path) -> Mapping[str, Style]:
    vocabulary = load_vocabulary(root)
    styles: dict[str, Style] = {}
    for path, file in toml_files(root, "styles"):
        style = _style(path, file, vocabulary)
        if style.slug != path.stem:
            step = f"Move it to seeds/styles/{style.slug}.toml."
            raise SeedFault(file, "slug", "the slug does not name the file", step)
        styles[style.slug] = style
    return styles


def _style(path: Path, file: str, vocabulary: Vocabulary) -> Style:
    """Read a style; an abbreviation must be a name of its stitch, so that what is asked for can be read."""
    style = fill(Style, read_toml(path, file), file)
    if style.basis == "published" and not style.source:
        raise SeedFault(file, "source", "missing", "Name where the style is published.")
    for key, name in style.abbreviations.items():
        place = f"abbreviations.{key}"
        if key not in vocabulary.stitches:
            raise SeedFault(file, place, "there is no such stitch", nearest(key, vocabulary.stitches))
        if key not in vocabulary.by_name.get(name.lower(), ()):
            names = {each for group in vocabulary[key].names.values() for each in group}
            raise SeedFault(file, place, f"{name!r} is not a name of this stitch", nearest(name, names))
    return style
