"""From the facts to what labels rest on: names of fibres, limits, and what each market wants."""

from __future__ import annotations

from collections.abc import Mapping
from fractions import Fraction
from typing import Any

from counterpane.craft.care.fibres import Fibre, Fibres
from counterpane.craft.care.finishing import Way
from counterpane.craft.care.groups import CareGroup, CareValue
from counterpane.craft.care.law import Law, Want
from counterpane.library.plans.known import Facts

CARE = (
    "care-washing",
    "care-bleaching",
    "care-tumble-drying",
    "care-natural-drying",
    "care-ironing",
    "care-dry-cleaning",
    "care-wet-cleaning",
)
"""The facts of care values, in the order of a label."""


def law_of(facts: Facts) -> Law:
    """Return what labels rest on; the facts are those that ship with the program, by name."""
    virgin = facts["fibre-names-of-virgin-wool"]["value"]
    return Law(
        fibres=_fibres(facts, tuple(virgin["names"])),
        virgin_least=Fraction(virgin["least_percent"]),
        left_out_most=_figures(facts["fibre-left-out-most"]["value"]),
        part_least=Fraction(facts["fibre-part-least"]["value"]),
        named_from={
            "US": Fraction(facts["fibre-named-from-us"]["value"]),
            "CA": Fraction(facts["fibre-named-from-canada"]["value"]),
        },
        always_named=tuple(facts["fibre-wool-us"]["value"]),
        tolerances=_tolerances(facts),
        groups=tuple(_group(name, fact["value"]) for name, fact in ((each, facts[each]) for each in CARE)),
        untreated_wool_most=Fraction(facts["care-untreated-wool-most"]["value"]),
        american_dots=facts["care-dots-us"]["value"],
        american_degrees=facts["care-fahrenheit-us"]["value"],
        wants=tuple(_want(fact) for name, fact in facts.items() if name.startswith("label-")),
    )


def _fibres(facts: Facts, virgin: tuple[str, ...]) -> Fibres:
    american = {**facts["fibre-names-us-from-memory"]["value"], **facts["fibre-names-us"]["value"]}
    french = facts["fibre-names-french"]["value"]
    tables = [fact["value"] for fact in facts.values() if isinstance(fact["value"], Mapping)]
    known = (table for table in tables if "allowance" in table)
    unclear = {word: tuple(each["one_of"]) for each in tables if "one_of" in each for word in _words(each)}
    return Fibres(tuple(_fibre(table, american, french) for table in known), virgin, unclear)


def _words(table: Mapping[str, Any]) -> tuple[str, ...]:
    return (table["name"], *table.get("also", ()))


def _fibre(table: Mapping[str, Any], american: Mapping[str, str], french: Mapping[str, str]) -> Fibre:
    name = table["name"]
    return Fibre(
        name=name,
        number=int(table["number"]),
        sort=table["sort"],
        allowance=_figures(table["allowance"]),
        usual=table.get("usual"),
        loss=_figures(table.get("loss", {})),
        also=tuple(table.get("also", ())),
        trade=tuple(table.get("trade", ())),
        american=american.get(name),
        french=french.get(name),
    )


def _group(name: str, table: Mapping[str, Any]) -> CareGroup:
    values = ((each["value"], each["says"], each["ranks"]) for each in table["values"])
    found = tuple(CareValue(word, says, tuple(map(int, ranks))) for word, says, ranks in values)
    return CareGroup(name.removeprefix("care-").replace("-", "_"), table["group"], found)


def _want(fact: Mapping[str, Any]) -> Want:
    value = fact["value"]
    return Want(
        markets=tuple(value["markets"]),
        field=value["field"],
        duty=value["duty"],
        says=fact["says"],
        source=fact["source"],
        confidence=fact["confidence"],
        instead=value.get("instead"),
    )


def ways_of(facts: Facts) -> tuple[Way, ...]:
    """Return how each kind of fibre is finished."""
    return tuple(_way(name, fact) for name, fact in facts.items() if name.startswith("finishing-"))


def _way(name: str, fact: Mapping[str, Any]) -> Way:
    value = fact["value"]
    width, length = ((Fraction(ends[0]), Fraction(ends[1])) for ends in (value["width"], value["length"]))
    return Way(
        name=name.removeprefix("finishing-"),
        says=fact["says"],
        sorts=tuple(value["sorts"]),
        fibres=tuple(value["fibres"]),
        superwash={"yes": True, "no": False}.get(value["superwash"]),
        soak=value["soak"],
        steam=value["steam"] == "above",
        pins=value["pins"] == "yes",
        tumble=value["tumble"],
        width=width,
        length=length,
    )


def _tolerances(facts: Facts) -> dict[str, Fraction]:
    told = [fact["value"] for name, fact in facts.items() if name.startswith("fibre-tolerance")]
    return {market: Fraction(value["percent"]) for value in told for market in value["markets"]}


def _figures(table: Mapping[str, str]) -> dict[str, Fraction]:
    return {name: Fraction(figure) for name, figure in table.items()}
