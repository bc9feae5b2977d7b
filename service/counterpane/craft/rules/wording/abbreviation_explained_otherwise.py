"""An abbreviation whose explanation is that of another stitch."""

from __future__ import annotations

import re
from collections.abc import Iterator

from counterpane.craft.checking import Examined
from counterpane.craft.checking.runs import given_line
from counterpane.craft.checking.wording import at, quoted
from counterpane.craft.findings import Finding, rule
from counterpane.craft.rows.glossary import Entry, usual_meaning
from counterpane.craft.rows.lexicon import lexicon_of
from counterpane.craft.rows.words import Line, tokens
from counterpane.craft.stitches import Stitch, Vocabulary

_SIDES = {"rs": ("wrong", "right"), "ws": ("right", "wrong")}


@rule(
    "abbreviation-explained-otherwise",
    family="wording",
    severity="warning",
    bad="k = knit\nssk = knit 2 together\n\nCast on 4 sts.\nRow 1: K2, ssk.",
    good="k = knit\nssk = slip, slip, knit\n\nCast on 4 sts.\nRow 1: K2, ssk.",
    source="meanings: four published lists of abbreviations that agree",
)
def abbreviation_explained_otherwise(examined: Examined) -> Iterator[Finding]:
    """An abbreviation is explained as another stitch.

    Knitters know most abbreviations and do not read the list: they work the stitch that the trade means. It is said
    only where the explanation is that of a stitch with another count, another face or another lean.
    """
    seen: set[tuple[str, ...]] = set()
    for entry in examined.instructions.page.glossary.entries:
        usual = _contradicted(entry, examined.vocabulary)
        if usual is None or entry.names in seen:
            continue
        seen.add(entry.names)
        said = usual_meaning(entry.names[0], examined.vocabulary, examined.instructions.terms) or usual
        message = f"{quoted(entry.printed)} is explained as {quoted(entry.meaning)}; the trade means {quoted(said)}."
        hint = "Explain it so, or use the abbreviation of the stitch that is meant."
        corrections = _with_meaning(given_line(examined, entry.place.line), entry, said)
        place = entry.place
        yield at(place, "abbreviation-explained-otherwise", "warning", message, hint, corrections=corrections)


def _contradicted(entry: Entry, vocabulary: Vocabulary) -> str | None:
    """Return what the trade means, where it is clearly another thing than the entry says."""
    name = entry.names[0] if len(entry.names) == 1 else ""
    if name in _SIDES:
        other, own = _SIDES[name]
        wrong = re.search(rf"\b{other}\b", entry.meaning) and not re.search(rf"\b{own}\b", entry.meaning)
        return f"{own} side" if wrong else None
    meant, told = vocabulary.by_name.get(name, ()), _told(entry.meaning, vocabulary)
    if len(meant) != 1 or told is None:
        return None
    return name if _differ(vocabulary[meant[0]], told) else None


def _told(meaning: str, vocabulary: Vocabulary) -> Stitch | None:
    """Return the stitch that a meaning names from its first word to its first pause."""
    run = tokens(Line(1, meaning))
    length, keys = lexicon_of(vocabulary).names.longest(run, 0)
    ends = length == len(run) or (length and run[length].kind in ("pause", "open"))
    if not ends or keys is None or len(keys) != 1:
        return None
    stitch = vocabulary[keys[0]]
    return None if stitch.ambiguous else stitch


def _differ(one: Stitch, other: Stitch) -> bool:
    """Tell whether two stitches differ in count, or in a face or lean that both have."""
    if one.ambiguous or (one.uses, one.makes) == (other.uses, other.makes) == (0, 0):
        return False
    faces = one.face != other.face and None not in (one.face, other.face)
    leans = one.lean != other.lean and None not in (one.lean, other.lean)
    return (one.uses, one.makes) != (other.uses, other.makes) or faces or leans


def _with_meaning(line: str, entry: Entry, meaning: str) -> tuple[str, ...]:
    """Return the line with another meaning."""
    at_meaning = line.lower().find(entry.meaning, entry.place.column - 1)
    if at_meaning < 0:
        return ()
    return (line[:at_meaning] + meaning + line[at_meaning + len(entry.meaning) :],)
