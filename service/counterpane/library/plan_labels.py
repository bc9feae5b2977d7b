"""The label, the care and the finishing of a planned piece, from the yarn of its request."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from typing import Any

from counterpane.craft.care.finishing import Aftercare, finish
from counterpane.craft.care.labels import Piece, labelled
from counterpane.craft.care.law import Law
from counterpane.craft.care.wordings import care_said
from counterpane.craft.care.yarns import Share, Yarn
from counterpane.library.facts import Facts
from counterpane.library.label_facts import law_of, ways_of
from counterpane.library.label_requests import care_of, number_of

Content = Mapping[str, Any]


def yarns_told(given: Any, law: Law) -> tuple[Yarn, ...]:
    """Read the fibres and the care of the `yarn` of a plan request: null, one yarn, or a list with one a colour."""
    listed = [given] if isinstance(given, Mapping) else given if isinstance(given, Sequence) else []
    return tuple(_yarn(each, number, law) for number, each in enumerate(listed, 1))


def _yarn(given: Content, number: int, law: Law) -> Yarn:
    told = [_share(each, law) for each in given.get("fibre") or given.get("fibres") or ()]
    shares = tuple(share for share in told if share is not None)
    return Yarn(
        name=given.get("colour") or given.get("name") or f"yarn {number}",
        fibres=shares if shares and len(shares) == len(told) else None,
        superwash=given.get("superwash"),
        care=care_of(given.get("care")),
    )


def _share(given: Content, law: Law) -> Share | None:
    """Return a fibre with its per cent; None where that is not known, since the yarn is not known then."""
    name, percent = given.get("fibre") or given.get("name"), given.get("percent", given.get("pct"))
    return None if percent is None or not name else Share(law.fibres.read(name), number_of(percent))


def aftercare(given: Any, facts: Facts) -> Aftercare | None:
    """Return the finishing and the care of a piece in the `yarn` of a plan request; None where that is null."""
    law = law_of(facts)
    yarns = yarns_told(given, law)
    if not yarns:
        return None
    care = care_said(labelled(Piece(yarns), law)) if any(yarn.care for yarn in yarns) else None
    return Aftercare(finish(yarns, ways_of(facts)), care)
