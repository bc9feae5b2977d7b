"""The label, the care and the finishing of a planned piece, from the yarn of its request."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import replace
from typing import Any

from counterpane.craft.care.finishing import Aftercare, finish
from counterpane.craft.care.labels import Labelled, Piece, labelled
from counterpane.craft.care.law import Law
from counterpane.craft.care.wordings import care_said
from counterpane.craft.care.yarns import Share, Yarn
from counterpane.craft.yarn import Yarn as PlanYarn
from counterpane.craft.yarn import YarnEstimate
from counterpane.library.plans.known import Facts
from counterpane.library.yarn.label_facts import law_of, ways_of
from counterpane.library.yarn.label_requests import care_of, number_of
from counterpane.library.yarn.labels import label_json
from counterpane.library.yarn.yarn_requests import yarns_of

Content = Mapping[str, Any]
Answer = dict[str, Any]

OF_A_SALE = "market-field-not-told"
"""The rule that asks what a sold piece's label lacks: of no use before the piece is made."""


def yarns_told(given: Any, law: Law) -> tuple[Yarn, ...]:
    """Read the fibres and the care of the `yarn` of a plan request: null, one yarn, or a list with one a colour."""
    listed = [given] if isinstance(given, Mapping) else given if isinstance(given, Sequence) else []
    return tuple(_yarn(each, number, law) for number, each in enumerate(listed, 1))


def label_of_plan(content: Content, estimate: YarnEstimate | None, facts: Facts) -> Answer | None:
    """Return the label of a planned piece as JSON values, with its yarns in the estimated grams; None without yarn.

    Its markets are those that the piece is for. What is asked of a piece that is sold stands with each market, and is
    no finding.
    """
    if estimate is None:
        return None
    law = law_of(facts)
    markets = tuple(dict.fromkeys((content.get("for") or {}).get("markets") or ()))
    used = _used(content.get("yarn"), estimate, law)
    answer = label_json(labelled(Piece(tuple(used.values()), markets=markets), law), facts)
    findings = [_placed(finding, content.get("yarn"), tuple(used)) for finding in answer["findings"]]
    return answer | {"findings": [finding for finding in findings if finding["rule"] != OF_A_SALE]}


def _used(given: Any, estimate: YarnEstimate, law: Law) -> dict[int, Yarn]:
    """Return the yarns that the plan uses by their places, each with its grams, and its part where parts have yarns."""
    grams = {each.yarn: each.grams for each in estimate.colours}
    known = {place: yarn for place, yarn in enumerate(yarns_of(given)) if yarn in grams}
    apart = any(yarn.parts for yarn in known.values()) and not any(yarn.rows for yarn in known.values())
    told = yarns_told(given, law)
    return {
        place: replace(
            told[place],
            estimate=(mass.low, mass.high) if (mass := grams[yarn]) else None,
            part=_part(yarn) if apart else None,
        )
        for place, yarn in known.items()
    }


def _part(yarn: PlanYarn) -> str:
    """Name the parts that a yarn works; one without parts works all that no other does."""
    return " and ".join(part.replace("_", "-") for part in yarn.parts) or "the rest"


def _placed(finding: Answer, given: Any, places: Sequence[int]) -> Answer:
    """Return a finding with its pointers into the plan request; `places` are those of the label's yarns there."""
    changes = [change | {"pointer": _pointer(change["pointer"], given, places)} for change in finding["corrections"]]
    return finding | {"pointer": _pointer(finding["pointer"], given, places), "corrections": changes}


def _pointer(pointer: str, given: Any, places: Sequence[int]) -> str:
    """Turn a pointer into the yarns of a label into one into the yarn of a plan, which is one or a list."""
    number, *rest = pointer.split("/")[2:] or [""]
    if not number:
        return "/yarn"
    place = places[int(number)]
    yarn = given if isinstance(given, Mapping) else given[place]
    if rest[:1] == ["fibre"] and yarn.get("fibres"):
        rest = ["fibres", *rest[1:2], *({"fibre": "name", "percent": "pct"}.get(step, step) for step in rest[2:])]
    return "/".join(["/yarn", *([] if isinstance(given, Mapping) else [str(place)]), *rest])


def for_with_yarn(content: Content, label: Answer | None) -> Content:
    """Return what a piece is for, with what its label knows of fibres and washing where nothing is said of them."""
    known = label["safety_inputs"] if label else {}
    said = {name: value for name, value in (content.get("for") or {}).items() if value is not None}
    return {name: value for name, value in known.items() if value is not None} | said


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


def aftercare(content: Content, estimate: YarnEstimate | None, facts: Facts) -> Aftercare | None:
    """Return the finishing and the care of a planned piece by the yarns that it uses; None without yarn."""
    if estimate is None:
        return None
    law = law_of(facts)
    yarns = tuple(_used(content.get("yarn"), estimate, law).values())
    made = labelled(Piece(yarns), law)
    care = care_said(made) if any(yarn.care for yarn in yarns) else None
    return Aftercare(finish(yarns, ways_of(facts)), care, _allows(made, "ironing"), _allows(made, "tumble_drying"))


def _allows(made: Labelled, group: str) -> bool | None:
    """Tell whether a piece bears the tumble dryer, or an iron with steam; None where its label is not known.

    The last rank of ironing is steam, that of tumble drying the heat.
    """
    value = next(line.value for line in made.care if line.group.name == group)
    return None if value is None else value.ranks[-1] > 0
