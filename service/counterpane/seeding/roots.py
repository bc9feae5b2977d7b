"""Where the seeds lie: inside the installed package, else in the checkout."""

from __future__ import annotations

from collections.abc import Iterator
from pathlib import Path

from counterpane.seeding.faults import SeedFault

_PACKAGE = Path(__file__).resolve().parent.parent


def seeds_root() -> Path:
    """Return the folder of the seeds: the packaged one first, else that of the checkout; SeedFault where neither is."""
    for root in (_PACKAGE / "_seeds", _PACKAGE.parent.parent / "seeds"):
        if root.is_dir():
            return root
    raise SeedFault("seeds", "", "no folder of seeds is there", "Install counterpane again, or run from a checkout.")


def toml_files(root: Path, folder: str) -> Iterator[tuple[Path, str]]:
    """Give each TOML file below a folder of the seeds, in order of name, with its name as faults print it."""
    for path in sorted((root / folder).rglob("*.toml")):
        yield path, f"seeds/{path.relative_to(root).as_posix()}"


def language_codes(root: Path | None = None) -> tuple[str, ...]:
    """Return the codes of the languages that there are translators' files for, in order."""
    return tuple(sorted(path.stem for path in ((root or seeds_root()) / "languages").glob("*.po")))
