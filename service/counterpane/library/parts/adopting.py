"""Adopt a texture or border from its words: what follows is filled in, the rest is asked for, nothing is invented."""

from __future__ import annotations

import re
import unicodedata
from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass
from typing import Any, cast

from counterpane.craft.checking import Examined, examine
from counterpane.craft.component import Component, Kind, Problem, component_of, content_of, derive
from counterpane.craft.component.adoption import adopted, disagreements, faces, obstacles
from counterpane.craft.findings import Finding
from counterpane.craft.openings import SLIPPED
from counterpane.craft.pattern.abbreviations import abbreviations
from counterpane.craft.rows.instructions import read_sizes
from counterpane.craft.rows.tree import Work
from counterpane.craft.rules import judge_text
from counterpane.craft.stitches import Vocabulary
from counterpane.library.errors import Refused
from counterpane.library.parts.telling import derived_json

KINDS: tuple[Kind, ...] = ("body", "border", "selvedge")
"""The kinds that are worked in rows; a cast-on or bind-off is told in steps."""

LONGEST_SLUG = 80
LONGEST_TITLE = 80
"""Characters of a heading that may be the name of a component; a longer one is prose. House."""

_OWN = (
    "summary",
    "also_called",
    "reversible",
    "across_corner",
    "slipped_edge",
    "gauge_notes",
)
_ORIGIN = ("source", "licence", "author", "where", "year", "printed")


@dataclass(frozen=True, slots=True)
class Question:
    """Something that does not follow from the rows: the pointer of its answer, and the question."""

    pointer: str
    text: str


@dataclass(frozen=True, slots=True)
class Adoption:
    """A component as far as it is known: its content, what is derived, what is open, and the findings of its text."""

    content: Mapping[str, Any]
    derived: Mapping[str, Any]
    questions: tuple[Question, ...]
    findings: tuple[Finding, ...]
    notes: tuple[str, ...] = ()


_ASKED: tuple[tuple[str, str], ...] = (
    ("kind", "Which part of a blanket is it: body, border or selvedge?"),
    ("name", "What is it called? The text has no title."),
    ("slug", "Under which slug is it kept? None can be made of its name: use lower-case letters, digits and hyphens."),
    ("licence", "Under which licence may its words be used: CC0-1.0, CC-BY-4.0 or CC-BY-SA-4.0?"),
    ("author", "Who wrote its words: a name or a pseudonym?"),
    ("source", "Where does it come from: the slug of a source, such as common-practice?"),
    ("across_corner", "Does the border look right where it goes on over the corner, true or false?"),
    ("slipped_edge", "How is its edge stitch slipped, kwise or pwise, and is the yarn at the front or the back?"),
)


def adopt(text: str, answers: Mapping[str, Any], vocabulary: Vocabulary) -> Adoption:
    """Read a text with its stated multiple and make a component of it, as far as that is known.

    `answers` are what people say: kind, name, slug, summary, licence, author, source, where, year, printed,
    also_called, gauge_notes, reversible, across_corner, slipped_edge and terms, each where it is known. Raise Refused
    with findings where the text does not hold.
    """
    examined = examine(text, vocabulary, None, answers.get("terms"))
    findings = judge_text(examined)
    _refuse(findings)
    _refuse([_finding(problem) for problem in obstacles(examined.instructions)] or _underived(examined))
    _refuse(_sized(text, examined, vocabulary))
    component = _component(examined, answers, vocabulary)
    _refuse([_finding(problem) for problem in disagreements(component, examined.rows, vocabulary)])
    shown = faces(examined.rows, component.examples[0].stitches, vocabulary)
    told = {"faces": shown, "abbreviations": _abbreviations(component, vocabulary)}
    derived = derived_json(component, vocabulary) | told
    content = content_of(component) | ({} if answers.get("kind") else {"kind": None})
    questions = tuple(_open(examined, component, answers))
    return Adoption(content, derived, questions, findings, tuple(_notes(examined, shown)))


def _notes(examined: Examined, shown: Mapping[str, int]) -> Iterator[str]:
    """Say which side was taken as the right one, where the text does not."""
    if all(row.side is None for row in examined.rows):
        yield "No row says its side: row 1 is taken as a RS row."
        if shown.get("purl", 0) > shown.get("knit", 0):
            yield "The right side then shows more purl than knit: if the other side is right, write (WS) after Row 1."


def _refuse(findings: Sequence[Finding]) -> None:
    """Raise Refused with all findings where one of them is an error; the cause of an error may be a warning."""
    error = next((finding for finding in findings if finding.severity == "error"), None)
    if error is not None:
        raise Refused(f"The text does not hold: {error.message}", tuple(findings))


def _sized(text: str, examined: Examined, vocabulary: Vocabulary) -> list[Finding]:
    """Return what keeps a text in several sizes out: rows that are not the same in all of them."""
    if examined.instructions.sizes is None:
        return []
    for other in read_sizes(text, vocabulary, examined.instructions.terms):
        for row, here in zip(examined.rows, other.rows, strict=False):
            if row.parts != here.parts:
                said = "This row is another in each size, and a component has one."
                return [_finding(Problem("/text", said, "Adopt the rows of one size.", row.place))]
    return []


def _underived(examined: Examined) -> list[Finding]:
    if examined.complete and examined.chain.starts:
        return []
    said = "The counts of these rows cannot be derived."
    return [Finding("does-not-prove", "error", said, "Leave out turns and markers.", pointer="/text")]


def _finding(problem: Problem) -> Finding:
    line, column = (problem.place.line, problem.place.column) if problem.place else (None, None)
    return Finding(problem.rule or "does-not-prove", "error", problem.message, problem.step, line, column, "/text")


def _component(examined: Examined, answers: Mapping[str, Any], vocabulary: Vocabulary) -> Component:
    """Return the component with the answers in it; what is not known is empty."""
    stated = examined.instructions.cast_on
    kind = cast(Kind, answers.get("kind") or "body")
    found = adopted(kind, examined.rows, examined.chain, vocabulary, stated.count if stated else None)
    known = {field: value for field, value in answers.items() if value is not None}
    name = known.get("name") or _title(examined.instructions.title or "")
    content = content_of(found) | {field: known[field] for field in _OWN if field in known}
    content["provenance"] |= {field: known[field] for field in _ORIGIN if field in known}
    return component_of(content | {"name": name, "slug": known.get("slug") or slug_of(name)})


def _title(heading: str) -> str:
    return heading.rstrip(".:;, ") if len(heading) <= LONGEST_TITLE else ""


def slug_of(name: str) -> str:
    """Make a slug of a name; empty where no letter or digit of it can stand in one."""
    plain = unicodedata.normalize("NFKD", name).encode("ascii", "ignore").decode().lower().replace("'", "")
    return re.sub(r"[^a-z0-9]+", "-", plain)[:LONGEST_SLUG].strip("-")


def _open(examined: Examined, component: Component, answers: Mapping[str, Any]) -> Iterator[Question]:
    """Give the questions that are open, in the order in which they are asked."""
    provenance = component.provenance
    known = {
        "kind": bool(answers.get("kind")),
        "name": bool(component.name),
        "slug": bool(component.slug) or not component.name,
        "licence": bool(provenance.licence),
        "author": bool(provenance.author),
        "source": bool(provenance.source),
        "across_corner": component.kind != "border" or component.across_corner is not None,
        "slipped_edge": component.kind != "selvedge" or component.slipped_edge is not None or not _slips(examined),
    }
    return (Question(f"/{field}", text) for field, text in _ASKED if not known[field])


def _slips(examined: Examined) -> bool:
    firsts = (row.parts[0] for row in examined.rows if row.parts)
    return any(isinstance(node, Work) and node.stitch in SLIPPED for node in firsts)


def _abbreviations(component: Component, vocabulary: Vocabulary) -> list[dict[str, str]]:
    """Return the abbreviations that its rows need, with their meanings in US terms, in which they are said."""
    (version,) = derive(component, vocabulary).versions
    entries = abbreviations(version.rows, component.versions[0].rows.splitlines(), vocabulary, "us")
    return [{"name": entry.name, "meaning": entry.text} for entry in entries]
