"""Errata as JSON values: between two editions, and the drafts that a corrected component asks for."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from decimal import Decimal
from typing import Any

from counterpane.craft.erratum import Change, Line, Place
from counterpane.craft.erratum.comparing import changes, in_sizes
from counterpane.craft.stitches import Terms

Content = Mapping[str, Any]
Sizes = Mapping[str, Sequence[Line]]
SAFETY = "safety"
"""The reason of an edition that mends a fault of safety."""


def between(old: Content, fresh: Content, terms: Terms, path: Sequence[Content]) -> dict[str, Any]:
    """Return the erratum from one edition to a later one; `path` are the editions on the way, the later one included.

    It is one of safety where any of them is. Sizes are compared by their names.
    """
    noted = [each for each in path if each["note"]]
    notes = [f"Edition {each['number']}: {each['note']}" if len(path) > 1 else each["note"] for each in noted]
    erratum = erratum_json(
        lines_in(old, terms), lines_in(fresh, terms), for_safety=any(each["reason"] == SAFETY for each in path)
    )
    head = {"recipe": fresh["recipe"], "from": old["number"], "to": fresh["number"], "terms": terms}
    return head | {"note": "\n".join(notes)} | erratum


def erratum_json(old: Sizes, fresh: Sizes, *, for_safety: bool) -> dict[str, Any]:
    """Return what differs between patterns of several sizes; a size that one of them lacks is named, not compared."""
    both = [size for size in fresh if size in old]
    found = in_sizes({size: changes(old[size], fresh[size], for_safety=for_safety) for size in both})
    return {
        "safety": for_safety or any(change.is_of_safety for change in found),
        "first_row": _first_row(found),
        "sizes_added": [size for size in fresh if size not in old],
        "sizes_left_out": [size for size in old if size not in fresh],
        "changes": [_change(change) for change in found],
    }


def _first_row(found: Sequence[Change]) -> int | None:
    """Return the first row of the blanket that is worked otherwise, None where none is."""
    past = [each.past_row for each in found if each.past_row is not None and not each.piece]
    return min(past) + 1 if past else None


def lines_in(edition: Content, terms: Terms) -> dict[str, tuple[Line, ...]]:
    """Return the lines of an edition in these terms, by the name of the size."""
    found = (each for each in edition["patterns"] if each["terms"] == terms)
    return {each["size"]: tuple(_line(line) for line in each["lines"]) for each in found}


def _line(content: Content) -> Line:
    return Line(**{**content, "place": Place(**content["place"])})


def _change(change: Change) -> dict[str, Any]:
    return {
        "sort": change.sort,
        "safety": change.is_of_safety,
        "section": change.place.section,
        "row": change.place.row,
        "old": change.old,
        "new": change.fresh,
        "old_stitches": change.old_stitches,
        "new_stitches": change.fresh_stitches,
        "sizes": list(change.sizes),
        "piece": change.piece or "blanket",
        "past_row": change.past_row,
        "rip_back_to": change.rip_back_to,
        "may_stay": change.may_stay,
        "advice": change.advice,
    }


def words_of(erratum: Content) -> str:
    """Return an erratum as plain text, each change with its place, both texts and what to do."""
    return "\n".join(_words(erratum)) + "\n"


def _words(erratum: Content) -> Iterator[str]:
    if erratum["safety"]:
        yield "This erratum concerns safety: read all of it."
    if erratum.get("note"):
        yield erratum["note"]
    if erratum["first_row"]:
        yield f"The first row of the blanket that is worked otherwise is row {erratum['first_row']}."
    yield from (f"Size {name} is added." for name in erratum["sizes_added"] if name)
    yield from (f"Size {name} is left out." for name in erratum["sizes_left_out"] if name)
    if not erratum["changes"]:
        yield "Nothing that is worked or read differs."
    for change in erratum["changes"]:
        yield ""
        yield f"{change['section']}{', ' if change['row'] else ''}{change['row']}{_sizes(change['sizes'])}"
        yield f"  Old: {_shown(change['old'], change['old_stitches'], change['new_stitches'])}"
        yield f"  New: {_shown(change['new'], change['new_stitches'], change['old_stitches'])}"
        yield f"  {change['advice']}"


def _sizes(names: Sequence[str]) -> str:
    return f" (size {', '.join(names)})" if names else ""


def _shown(text: str | None, stitches: int | None, other: int | None) -> str:
    """Show a text, with the stitches it leaves where the other text leaves others."""
    if text is None:
        return "(not there)"
    return text if stitches in (None, other) else f"{text} [leaves {stitches} stitches]"


def without_floats(value: Any) -> Any:
    """Return JSON values with each binary fraction as the decimal that it is written as."""
    if isinstance(value, float):
        return Decimal(repr(value))
    if isinstance(value, Mapping):
        return {name: without_floats(each) for name, each in value.items()}
    return [without_floats(each) for each in value] if isinstance(value, list | tuple) else value
