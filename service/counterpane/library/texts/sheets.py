"""The editor's sheet of a text: checked again, as values and as JSON."""

from __future__ import annotations

import hashlib
import re
from collections import Counter
from collections.abc import Iterator, Mapping, Sequence
from dataclasses import asdict, fields, replace
from typing import Any

from counterpane.craft.checking import examine
from counterpane.craft.editing import Places, Query, Sheet, rechecked, shortened
from counterpane.craft.rows.remarks import remark_in
from counterpane.craft.rows.words import given_lines
from counterpane.craft.rules import ALL
from counterpane.craft.rules.style import judge_style
from counterpane.craft.stitches import Terms, Vocabulary
from counterpane.craft.styles import Style
from counterpane.library.errors import NotFound
from counterpane.library.near import nearest
from counterpane.library.texts.checks import check_text, finding_json

_ACCEPTED = re.compile(r" Accepted on line (\d{1,7}): ")
_CONTROL = re.compile("[\\x00-\\x1f\\x7f-\\x9f\ud800-\udfff]+")


class UnknownStyle(NotFound):
    """A style is asked for that is not there; `pointer` says where in a request."""

    pointer = "/style"


def check_sheet(text: str, vocabulary: Vocabulary, sheet: Sheet, style: Style | None = None) -> Sheet:
    """Check a text in the manner that its sheet says, and return the sheet as it stands then.

    `style` is the house style that the sheet names; where it names one, departures from it are queries as well.
    """
    terms: Terms | None = "us" if sheet.terms == "us" else "uk" if sheet.terms == "uk" else None
    answer = check_text(text, vocabulary, sheet.cast_on, terms)
    lines = given_lines(text)
    places = Places(text, [(row["line"], row["section"]) for row in answer["rows"]])
    found = [_query(finding, sizes, places, lines) for finding, sizes in _findings(answer)]
    if style is not None:
        departures = judge_style(examine(text, vocabulary, sheet.cast_on, terms), style)
        found += [_query(finding_json(finding), (), places, lines) for finding in departures]
    found.sort(key=lambda query: (query.line or 0, query.column or 0))
    checked = hash_of(text)
    changed = sheet.checked is not None and sheet.checked != checked
    return replace(rechecked(sheet, found, changed), checked=checked)


def hash_of(text: str) -> str:
    """Return the SHA-256 of a text in UTF-8, by which a sheet knows it again."""
    return hashlib.sha256(text.encode("utf-8", "surrogatepass")).hexdigest()


def belongs(sheet: Sheet, text: str) -> bool:
    """Tell whether a text may be the one of a sheet: the text last checked, or one with a line that it asks about."""
    asked = {query.printed for query in sheet.queries if query.rule and query.state != "settled"}
    if sheet.checked in (None, hash_of(text)) or not asked:
        return True
    return any(_clean(shortened(line)) in asked for line in text.splitlines())


def style_of(styles: Mapping[str, Style], slug: str | None) -> Style | None:
    """Return the style of a slug; None for none, UnknownStyle with the nearest for one that is not there."""
    if slug is None:
        return None
    if slug not in styles:
        raise UnknownStyle(f"There is no style {slug!r}.", nearest(slug, styles) or f"Styles are {', '.join(styles)}.")
    return styles[slug]


def _findings(answer: Mapping[str, Any]) -> Iterator[tuple[Mapping[str, Any], tuple[int, ...]]]:
    """Give each finding once with the sizes it is about; none where all sizes or no sizes have it."""
    sizes = answer["sizes"] or ()
    seen: dict[tuple[object, ...], tuple[Mapping[str, Any], list[int]]] = {}
    for number, part in enumerate([answer, *sizes]):
        times: Counter[tuple[object, ...]] = Counter()
        for finding in part["findings"]:
            place = (finding["rule"], finding["line"], finding["column"])
            seen.setdefault((*place, times[place]), (finding, []))[1].append(number)
            times[place] += 1
    for finding, numbers in seen.values():
        own = tuple(number for number in numbers if number)
        counted = finding["rule"] in ALL and ALL[finding["rule"]].family == "counting"
        yield finding, own if counted and len(own) < len(sizes) else ()


def _query(finding: Mapping[str, Any], sizes: tuple[int, ...], places: Places, lines: Sequence[str]) -> Query:
    """Return what a finding asks, not yet numbered; signs that cannot be printed are left out."""
    spot = places.spot(finding["line"], finding["column"])
    return Query(
        0,
        "",
        rule=finding["rule"],
        severity=finding["severity"],
        section=spot.section and _clean(spot.section),
        row=spot.row,
        line=finding["line"],
        column=finding["column"],
        printed=_clean(spot.printed),
        words=_clean(spot.words),
        sizes=sizes,
        accepted=_is_accepted(finding, lines),
        finding=_clean(finding["message"]),
        hint=_clean(finding["hint"]),
        suggestions=tuple(_clean(text) for text in finding["corrections"]),
    )


def _is_accepted(finding: Mapping[str, Any], lines: Sequence[str]) -> bool:
    """Tell whether a line of the text accepts a finding: its message names that line."""
    found = _ACCEPTED.search(finding["message"])
    number = int(found[1]) if found else 0
    remark = remark_in(lines[number - 1], number) if 0 < number <= len(lines) else None
    return remark is not None and remark.level is None and remark.slug == finding["rule"]


def _clean(text: str) -> str:
    return " ".join(_CONTROL.sub(" ", text).split())


# -- as JSON values


def sheet_of(content: Mapping[str, Any]) -> Sheet:
    """Return a sheet from JSON values that the schema has let through; what is left out is empty."""
    queries = tuple(_query_of(each) for each in content.get("queries", ()))
    return Sheet(**{name: content.get(name) for name in _HEAD}, queries=queries)


def _query_of(content: Mapping[str, Any]) -> Query:
    given: dict[str, Any] = {"number": 0, "question": ""}
    for name in {field.name for field in fields(Query)} & set(content):
        given[name] = tuple(content[name]) if isinstance(content[name], list) else content[name]
    return Query(**given)


_HEAD = ("text", "checked", "cast_on", "terms", "style")


def sheet_json(sheet: Sheet) -> dict[str, Any]:
    """Return a sheet as JSON values, each kept query with the line that accepts its finding in the text."""
    queries = [asdict(query) | {"acceptance": acceptance(query)} for query in sheet.queries]
    lists = [each | {name: list(each[name]) for name in ("sizes", "suggestions")} for each in queries]
    return {name: getattr(sheet, name) for name in _HEAD} | {"queries": lists}


def acceptance(query: Query) -> str | None:
    """Return the line by which a text accepts a finding that is kept; None where it does, or for any other query.

    A departure from a style is accepted throughout, since one query stands for all of its kind.
    """
    if query.state != "kept" or query.accepted or query.rule is None or query.rule not in ALL:
        return None
    reason = _clean(query.note or query.answer) or "it is meant so"
    throughout = " throughout" if ALL[query.rule].family == "style" else ""
    return f"Accept {query.rule}{throughout}: {reason}"
