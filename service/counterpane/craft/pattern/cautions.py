"""The safety record of a pattern, from the answer of the safety rules; what was not assessed is never a pass."""

from __future__ import annotations

from collections.abc import Mapping, Sequence

from counterpane.craft.pattern import Caution, Cautions, Entry

NOTHING_ASSESSED = "Safety was not assessed for this pattern. That is no pass."


_TOLD = ("rule", "severity", "reference", "basis", "message", "source")


def cautions(safety: Mapping[str, object], names: Mapping[str, str]) -> Cautions:
    """Return the cautions of a safety answer in the shape of `POST /v1/safety`, with what the parts record.

    `names` are the names of components by slug. A part of the answer that is missing says nothing.
    """
    return Cautions(
        standing=_texts(safety.get("cautions")) or (NOTHING_ASSESSED,),
        findings=tuple(_caution(finding) for finding in _objects(safety.get("findings"))),
        parts=tuple(_part(part, names) for part in _objects(safety.get("parts"))),
        estimates=_estimates(safety.get("estimates")),
        assessed=_texts(safety.get("assessed")),
        not_assessed=_texts(safety.get("not_assessed")),
        not_applicable=_texts(safety.get("not_applicable")),
        record=safety,
    )


def _caution(finding: Mapping[str, object]) -> Caution:
    told = {name: str(finding.get(name, "not known")) for name in _TOLD}
    return Caution(markets=_texts(finding.get("markets")), **told)


def _part(part: Mapping[str, object], names: Mapping[str, str]) -> Entry:
    slug = part.get("component")
    notes = part.get("notes")
    told = [f"{name.replace('_', ' ')}: {_note(note)}" for name, note in notes.items()] if isinstance(notes, Mapping) else []
    where = str(part.get("part", "")).replace("_", "-")
    return Entry(names.get(str(slug), "given in words") + f" ({where})", ", ".join(told) or "not known")


def _note(note: object) -> str:
    if isinstance(note, Mapping):
        return f"{note.get('value')} {note.get('unit')}"
    return str(note)


def _estimates(estimates: object) -> tuple[str, ...]:
    if not isinstance(estimates, Mapping):
        return ()
    return tuple(
        f"{kind.capitalize()}, {each.get('section')}: {each.get('message')}"
        for kind, found in estimates.items()
        for each in _objects(found)
    )


def _objects(values: object) -> tuple[Mapping[str, object], ...]:
    return tuple(value for value in _sequence(values) if isinstance(value, Mapping))


def _texts(values: object) -> tuple[str, ...]:
    return tuple(str(value) for value in _sequence(values))


def _sequence(values: object) -> Sequence[object]:
    return values if isinstance(values, Sequence) and not isinstance(values, str) else ()
