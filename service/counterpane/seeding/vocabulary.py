"""seeds/stitches/*.toml → Vocabulary: each entry one stitch, or a template that stands for a family of sizes."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping
from dataclasses import dataclass, field
from decimal import Decimal
from fractions import Fraction
from functools import cache
from pathlib import Path
from typing import Literal

from counterpane.craft.measures import exact
from counterpane.craft.stitches import Face, Stitch, Terms, Vocabulary
from counterpane.seeding.faults import SeedFault, nearest
from counterpane.seeding.roots import seeds_root, toml_files
from counterpane.seeding.shape import fill, read_toml

_WORDS = ("no", "one", "two", "three", "four", "five", "six", "seven", "eight", "nine", "ten", "eleven", "twelve")
_TERMS: tuple[Terms, ...] = ("us", "uk")


@dataclass(frozen=True, slots=True)
class Entry:
    """One entry of a stitch file: a stitch, or a template over `sizes` ({n}, {half}, {word}) or `pairs` ({a}, {b}).

    `uses` and `makes` of a template may be sums of its letters, such as "n" or "a+b". `loop_range` is the least and the
    most yarn of a stitch in loops, `loop_each` the same for each of the several loops that it makes.
    """

    key: str
    uses: int | str
    makes: int | str
    names: Mapping[str, tuple[str, ...]]
    said: Mapping[str, str]
    words: Mapping[str, tuple[str, ...]] = field(default_factory=dict)
    face: Face | None = None
    lean: Literal["left", "right", "centre"] | None = None
    back: str | None = None
    mirror: str | None = None
    opens: bool = False
    needs: int = 0
    ambiguous: tuple[str, ...] = ()
    source: str = "common practice, no source"
    loop_factor: str | None = None
    loop_range: tuple[str, ...] = ()
    loop_each: tuple[str, ...] = ()
    sizes: tuple[int, ...] = ()
    pairs: tuple[tuple[int, ...], ...] = ()


@dataclass(frozen=True, slots=True)
class _File:
    stitch: tuple[Entry, ...]


def load_vocabulary(root: Path | None = None) -> Vocabulary:
    """Load the vocabulary of the seeds, or of another folder of seeds; SeedFault where an entry does not hold."""
    return _load(root or seeds_root())


@cache
def _load(root: Path) -> Vocabulary:
    placed: dict[str, tuple[str, Stitch]] = {}
    for path, file in toml_files(root, "stitches"):
        for number, entry in enumerate(fill(_File, read_toml(path, file), file).stitch):
            for stitch in _expand(entry, file, f"stitch[{number}]"):
                if stitch.key in placed:
                    raise SeedFault(file, stitch.key, f"the key is taken in {placed[stitch.key][0]}", "Rename one.")
                placed[stitch.key] = (file, stitch)
    _check_keys(placed)
    return Vocabulary.of(stitch for _, stitch in placed.values())


def _expand(entry: Entry, file: str, key: str) -> Iterator[Stitch]:
    for letters in _letters(entry, file, key):
        yield _stitch(entry, letters, file, key)


def _letters(entry: Entry, file: str, key: str) -> Iterable[Mapping[str, int | str]]:
    if entry.sizes:
        return [{"n": n, "half": n // 2, "word": _WORDS[n]} for n in entry.sizes]
    if any(len(pair) != len("ab") for pair in entry.pairs):
        raise SeedFault(file, f"{key}.pairs", "a pair is two whole numbers", "Write [[1, 1], [2, 1]].")
    return [{"a": a, "b": b} for a, b in entry.pairs] or [{}]


def _stitch(entry: Entry, letters: Mapping[str, int | str], file: str, key: str) -> Stitch:
    def text(words: str) -> str:
        return _filled(words, letters, file, key)

    makes = _number(entry.makes, letters, file, f"{key}.makes")
    ends = _loops(entry, makes, file, key)
    return Stitch(
        key=text(entry.key),
        uses=_number(entry.uses, letters, file, f"{key}.uses"),
        makes=makes,
        names={terms: tuple(map(text, names)) for terms, names in _names(entry, file, key).items()},
        said={terms: text(said) for terms, said in _said(entry, file, key).items()},
        face=entry.face,
        lean=entry.lean,
        back=text(entry.back) if entry.back else None,
        mirror=text(entry.mirror) if entry.mirror else None,
        opens=entry.opens,
        needs=entry.needs,
        ambiguous=entry.ambiguous,
        source=entry.source,
        loop_factor=entry.loop_factor or (_decimal((ends[0] + ends[1]) / 2) if ends else None),
        loop_range=(_decimal(ends[0]), _decimal(ends[1])) if ends else None,
        words={terms: tuple(map(text, words)) for terms, words in _in_full(entry, file, key).items()},
    )


def _loops(entry: Entry, makes: int, file: str, key: str) -> tuple[Fraction, Fraction] | None:
    """Return the least and the most yarn of a stitch in loops, None where the entry gives no range."""
    given, times = (entry.loop_each, makes) if entry.loop_each else (entry.loop_range, 1)
    if not given:
        return None
    try:
        low, high = (exact(end) * times for end in given)
    except ValueError as fault:
        raise SeedFault(
            file, f"{key}.loop_range", f"{list(given)} is no pair of numbers", 'Write ["1", "1.1"].'
        ) from fault
    return low, high


def _decimal(value: Fraction) -> str:
    return f"{Decimal(value.numerator) / Decimal(value.denominator)}"


def _filled(words: str, letters: Mapping[str, int | str], file: str, key: str) -> str:
    try:
        return words.format(**letters)
    except (KeyError, IndexError, ValueError) as fault:
        raise SeedFault(file, key, f"{words!r} has a brace without a value", "Use {n}, or {a} and {b}.") from fault


def _number(value: int | str, letters: Mapping[str, int | str], file: str, key: str) -> int:
    if isinstance(value, int):
        return value
    numbers = [letters.get(part) for part in value.split("+")]
    if not all(isinstance(each, int) for each in numbers):
        raise SeedFault(file, key, f"{value!r} is no sum of {sorted(letters)}", "Write a whole number, or such a sum.")
    return sum(each for each in numbers if isinstance(each, int))


def _names(entry: Entry, file: str, key: str) -> dict[Terms, tuple[str, ...]]:
    _only_terms(entry.names, file, f"{key}.names")
    both = entry.names.get("both", ())
    full = _in_full(entry, file, key)
    names = {terms: tuple(dict.fromkeys((*entry.names.get(terms, ()), *both, *full[terms]))) for terms in _TERMS}
    for group in names.values():
        if not group:
            raise SeedFault(file, f"{key}.names", "a terminology has no name", "Give names.both, or us and uk.")
        if odd := next((name for name in group if name != " ".join(name.split())), None):
            raise SeedFault(file, f"{key}.names", f"{odd!r} is not written with single spaces", "Rewrite it.")
    return names


def _in_full(entry: Entry, file: str, key: str) -> dict[Terms, tuple[str, ...]]:
    """Return the names in full; they are names like all others."""
    _only_terms(entry.words, file, f"{key}.words")
    return {terms: entry.words.get(terms, entry.words.get("both", ())) for terms in _TERMS}


def _said(entry: Entry, file: str, key: str) -> dict[Terms, str]:
    _only_terms(entry.said, file, f"{key}.said")
    said = {terms: entry.said.get(terms, entry.said.get("both", "")) for terms in _TERMS}
    if not all(said.values()):
        raise SeedFault(file, f"{key}.said", "a terminology has no description", "Give said.both, or us and uk.")
    return said


def _only_terms(table: Mapping[str, object], file: str, key: str) -> None:
    for name in table:
        if name not in ("both", *_TERMS):
            raise SeedFault(file, f"{key}.{name}", "unknown terminology", nearest(name, ("both", *_TERMS)))


def _check_keys(placed: Mapping[str, tuple[str, Stitch]]) -> None:
    """Refuse a `back`, `mirror` or reading that names no stitch."""
    for file, stitch in placed.values():
        named = {"back": stitch.back, "mirror": stitch.mirror}
        named |= {f"ambiguous[{place}]": key for place, key in enumerate(stitch.ambiguous)}
        for name, key in named.items():
            if key is not None and key not in placed:
                raise SeedFault(file, f"{stitch.key}.{name}", f"no stitch {key!r}", nearest(key, placed))
