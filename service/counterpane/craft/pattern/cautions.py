"""The safety record of a pattern, from the answer of the safety rules; what was not assessed is never a pass."""

from __future__ import annotations

from collections.abc import Mapping, Sequence

from counterpane.craft.pattern import Caution, Cautions, Entry, record
from counterpane.craft.pattern.record import objects, texts
from counterpane.craft.pattern.terms import in_terms
from counterpane.craft.rules.safety import RULES
from counterpane.craft.stitches import Terms

NOTHING_ASSESSED = "Safety was not assessed for this pattern. That is no pass."


_TITLES = {rule.reference: rule.title for rule in RULES if rule.reference}
_TOLD = ("rule", "severity", "reference", "basis", "message", "source")


def cautions(safety: Mapping[str, object], names: Mapping[str, str], terms: Terms) -> Cautions:
    """Return the cautions of a safety answer, with what the parts record, in the terms of one trade.

    The answer has the shape of that of `POST /v1/safety`; a part of it that is missing says nothing. `names` are the
    names of components by slug.
    """
    spoken = {str(finding.get("reference")) for finding in objects(safety.get("findings"))}
    return Cautions(
        standing=tuple(in_terms(text, terms) for text in texts(safety.get("cautions"))) or (NOTHING_ASSESSED,),
        findings=tuple(_caution(finding, terms) for finding in objects(safety.get("findings"))),
        parts=_recorded(objects(safety.get("parts")), names, terms),
        estimates=tuple(in_terms(text, terms) for text in _estimates(safety.get("estimates"))),
        assessed=_titled(safety.get("assessed")),
        not_assessed=_titled(safety.get("not_assessed")),
        not_applicable=_titled(safety.get("not_applicable")),
        read_for=record.read_for(safety.get("read_for")),
        held=record.held(safety.get("profile")),
        measured=record.measured(objects(safety.get("measured"))),
        conflicts=record.conflicts(objects(safety.get("conflicts")), spoken),
        home_check=texts(safety.get("home_check")),
        record=safety,
    )


def _titled(references: object) -> tuple[str, ...]:
    return tuple(_title(reference) for reference in texts(references))


def _title(reference: str) -> str:
    title = _TITLES.get(reference)
    return f"{title[0].lower()}{title[1:].rstrip('.')} ({reference})" if title else reference


def _caution(finding: Mapping[str, object], terms: Terms) -> Caution:
    told = {name: str(finding.get(name, "not known")) for name in _TOLD}
    told["message"] = in_terms(told["message"], terms)
    return Caution(markets=texts(finding.get("markets")), **told)


_UNITS = (("stitch", "stitches"), ("yarn-over", "yarn-overs"), ("end", "ends"), ("row", "rows"))
"""Units of notes with their plurals; others stand as they were written."""


def _recorded(parts: Sequence[Mapping[str, object]], names: Mapping[str, str], terms: Terms) -> tuple[Entry, ...]:
    """Return what each component records, once, with the places in which it is used."""
    places: dict[tuple[str, str], list[str]] = {}
    for part in parts:
        name = names.get(str(part.get("component")), "A part given in words")
        place = in_terms(str(part.get("part")).replace("_", "-"), terms)
        places.setdefault((name, _notes(part.get("notes"))), []).append(place)
    return tuple(Entry(f"{name} ({', '.join(dict.fromkeys(where))})", notes) for (name, notes), where in places.items())


def _notes(notes: object) -> str:
    """Say in one line which risks a part has, which it has not, and which are not known."""
    if not isinstance(notes, Mapping):
        return "not known."
    told = {str(name).replace("_", " "): note for name, note in notes.items()}
    measured = [f"{name} {_measure(note)}" for name, note in told.items() if isinstance(note, Mapping)]
    absent = [name for name, note in told.items() if note == "none"]
    unknown = [name for name, note in told.items() if not isinstance(note, Mapping) and note != "none"]
    groups = {"": measured, "none: ": absent, "not known: ": unknown}
    return "; ".join(f"{group}{', '.join(names)}" for group, names in groups.items() if names) + "."


def _measure(note: Mapping[str, object]) -> str:
    """Say a value in its unit, whose number is that of the value: 1 stitch, 2 yarn-overs."""
    value, unit = str(note.get("value")), str(note.get("unit"))
    one, many = next((each for each in _UNITS if unit in each), (unit, unit))
    return f"{value} {one if value == '1' else many}"


def _estimates(estimates: object) -> tuple[str, ...]:
    if not isinstance(estimates, Mapping):
        return ()
    return tuple(
        f"{kind.capitalize()}, {each.get('section')}: {each.get('message')}"
        for kind, found in estimates.items()
        for each in objects(found)
    )
