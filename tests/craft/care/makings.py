"""Yarns and facts for tests of care: the names are those that ship with the program, the yarns are invented."""

from __future__ import annotations

from collections.abc import Mapping
from fractions import Fraction
from typing import Any

from counterpane.craft.care.yarns import Share, Yarn
from counterpane.library.yarn.label_facts import law_of
from counterpane.seeding.facts import load_facts

FACTS: Mapping[str, Mapping[str, Any]] = {fact["name"]: fact for fact in load_facts()}
LAW = law_of(FACTS)


def yarn(fibres: Mapping[str, object] | None, grams: object = None, **more: Any) -> Yarn:
    """Return a yarn of fibres by their words, in per cent."""
    shares = None
    if fibres is not None:
        shares = tuple(Share(LAW.fibres.read(word), Fraction(str(part))) for word, part in fibres.items())
    return Yarn("a yarn", shares, None if grams is None else Fraction(str(grams)), **more)


def dry(word: str, percent: str, state: str) -> Share:
    """Return a share of clean dry mass."""
    return Share(LAW.fibres.read(word), Fraction(percent), state)
