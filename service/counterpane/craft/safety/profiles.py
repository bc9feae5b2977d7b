"""A ward's or a charity's own list, dated, and a piece held against it: each item agrees, differs, or is not assessed.

The list is theirs and says nothing of any other place. An item that no input can judge is kept and not assessed.
"""

from __future__ import annotations

from collections.abc import Callable, Mapping
from dataclasses import dataclass
from fractions import Fraction
from typing import Literal

from counterpane.craft.safety.inputs import SafetyInputs
from counterpane.craft.safety.words import in_figures, kind_of

Verdict = Literal["agrees", "differs", "not assessed"]

FIGURES: tuple[str, ...] = (
    *("hole_mm", "float_mm", "tail_mm", "loop_mm", "loop_perimeter_mm", "cord_free_mm", "mass_g", "gsm"),
    *("width_cm", "length_cm", "layers", "wash.temp_c", "gauge_sts_10cm"),
)
"""Inputs that an item can hold to a figure."""

FLAGS: tuple[str, ...] = (
    *("openwork", "gaps", "halo", "raised_surface", "superwash", "filled", "weighted", "enclosed_part"),
    *("monofilament", "flame_retardant", "moth_treatment"),
)
"""Inputs that an item can want true or false."""

WORDS: tuple[str, ...] = ("fibres", "attachments", "wash.method")
"""Inputs that an item can hold to a list of words."""


@dataclass(frozen=True, slots=True)
class Item:
    """One line of a list in its own words, with the input that judges it and one condition; None where nothing does.

    `only` wants each fibre, attachment or way of washing among these words, `none_of` wants none of them.
    """

    says: str
    input: str | None = None
    at_least: Fraction | None = None
    at_most: Fraction | None = None
    under: Fraction | None = None
    wants: bool | None = None
    only: tuple[str, ...] | None = None
    none_of: tuple[str, ...] | None = None


@dataclass(frozen=True, slots=True)
class Profile:
    """A list with whose it is, its day, and where it was read; the day as ISO 8601 has it."""

    name: str
    dated: str
    source: str
    items: tuple[Item, ...]


@dataclass(frozen=True, slots=True)
class Held:
    """An item with its verdict and what was found, in words."""

    item: Item
    verdict: Verdict
    found: str


def hold(profile: Profile, inputs: SafetyInputs) -> tuple[Held, ...]:
    """Hold a piece against each item of a list, in its order."""
    return tuple(_held(item, inputs) for item in profile.items)


def _held(item: Item, inputs: SafetyInputs) -> Held:
    if item.input is None:
        return Held(item, "not assessed", "no input here judges this: look for yourself")
    if not inputs.knows(item.input):
        return Held(item, "not assessed", f"{item.input} is not known")
    if item.input in FIGURES:
        figure = _figure(item.input, inputs)
        return Held(item, _verdict(_within(item, figure)), f"{item.input} is {in_figures(figure)}")
    if item.input in FLAGS:
        flag = bool(getattr(inputs, item.input))
        return Held(item, _verdict(flag is item.wants), f"{item.input} is {'true' if flag else 'false'}")
    words = _LISTS[item.input](inputs)
    return Held(item, _verdict(_among(item, words)), f"{item.input}: {', '.join(words) or 'none'}")


def _verdict(holds: bool) -> Verdict:
    return "agrees" if holds else "differs"


def _figure(name: str, inputs: SafetyInputs) -> Fraction:
    if name == "wash.temp_c":
        return (inputs.wash and inputs.wash.temp_c) or Fraction(0)
    return Fraction(getattr(inputs, name))


def _within(item: Item, figure: Fraction) -> bool:
    return (
        (item.at_least is None or figure >= item.at_least)
        and (item.at_most is None or figure <= item.at_most)
        and (item.under is None or figure < item.under)
    )


def _among(item: Item, words: tuple[str, ...]) -> bool:
    only, none_of = item.only, item.none_of or ()
    return all(
        (only is None or any(wanted.casefold() in word for wanted in only))
        and not any(barred.casefold() in word for barred in none_of)
        for word in words
    )


_LISTS: Mapping[str, Callable[[SafetyInputs], tuple[str, ...]]] = {
    "fibres": lambda known: tuple(fibre.name.casefold() for fibre in known.fibres or ()),
    "attachments": lambda known: tuple(kind_of(each.kind) for each in known.attachments or ()),
    "wash.method": lambda known: tuple(sorted(known.wash.ways if known.wash is not None else ())),
}
