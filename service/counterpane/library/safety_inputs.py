"""Safety inputs from JSON values: strict, by name, each refusal with its place and the next step."""

from __future__ import annotations

from collections.abc import Callable, Collection, Mapping
from decimal import Decimal
from difflib import get_close_matches
from fractions import Fraction
from typing import TypeVar

from counterpane.craft.measures import exact
from counterpane.craft.safety import (
    AGE_BANDS,
    FEATURES,
    LABEL_FIELDS,
    MARKETS,
    USES,
    AgeBand,
    Attachment,
    Chemistry,
    Feature,
    Fibre,
    LabelField,
    Market,
    SafetyInputs,
    Use,
    Wash,
    band_of,
)
from counterpane.library.errors import LibraryError

T = TypeVar("T")
Choice = TypeVar("Choice", bound=str)
Parser = Callable[[str, object], T]

MOST_LETTERS = 200
"""House: the longest text that an input may be."""

MOST = 10**18
"""House: the largest number that an input may be."""


class BadInput(LibraryError):
    """A value that cannot be used; `pointer` is its JSON pointer (RFC 6901), "" for the whole."""

    def __init__(self, pointer: str, message: str, hint: str) -> None:
        super().__init__(message, hint)
        self.pointer = pointer


def inputs_of(content: Mapping[str, object], pointer: str = "") -> SafetyInputs:
    """Read safety inputs from JSON values at a pointer; a field that is absent or null is not known.

    Numbers are read by their decimal text. Of `age_band` and `age_months` together the stricter counts. BadInput for
    unknown fields, wrong types, numbers below 0 or not finite, and words that are not among those allowed.
    """
    known = _read_fields(pointer, content, {**FIELDS, "age_months": _age_months})
    bands = [band for band in (known.pop("age_months", None), known.get("age_band")) if band is not None]
    if bands:
        known["age_band"] = min(bands, key=AGE_BANDS.index)
    return SafetyInputs(**known)  # type: ignore[arg-type]


def _read_fields(pointer: str, content: object, fields: Mapping[str, Parser[object]]) -> dict[str, object]:
    if not isinstance(content, Mapping):
        raise BadInput(pointer, f"{_shown(content)} is not an object.", f"Give an object of {', '.join(fields)}.")
    for name in content:
        if name not in fields:
            raise BadInput(f"{pointer}/{_escaped(name)}", f"{_shown(name)} is no field here.", _near(name, fields))
    return {name: fields[name](f"{pointer}/{name}", value) for name, value in content.items() if value is not None}


def _near(word: object, allowed: Collection[str]) -> str:
    written = {name.casefold(): name for name in allowed}
    close = get_close_matches(word[:MOST_LETTERS].casefold(), written, n=1) if isinstance(word, str) else []
    return f"Did you mean {written[close[0]]}?" if close else f"Use one of: {', '.join(allowed)}."


def _escaped(name: object) -> str:
    return str(name)[:MOST_LETTERS].replace("~", "~0").replace("/", "~1")


def _shown(value: object) -> str:
    if isinstance(value, Mapping):
        return "An object"
    if isinstance(value, list | tuple):
        return "A list"
    if isinstance(value, int) and abs(value) > MOST:
        return "A number beyond 10^18"
    text = repr(value)
    return text if len(text) <= 60 else f"{text[:57]}…"


def _number(pointer: str, value: object) -> Fraction:
    if isinstance(value, bool) or not isinstance(value, int | float | Decimal | Fraction):
        raise BadInput(pointer, f"{_shown(value)} is not a number.", "Give a number, or leave the field out.")
    try:
        number = exact(repr(value) if isinstance(value, float) else value)
    except ValueError:
        raise BadInput(pointer, f"{_shown(value)} is no finite number.", "Give the value as measured.") from None
    if number < 0 or number > MOST:
        raise BadInput(pointer, f"{_shown(value)} is below 0 or beyond measure.", "Give a number from 0 to 10^18.")
    return number


def _above_zero(pointer: str, value: object) -> Fraction:
    number = _number(pointer, value)
    if number == 0:
        raise BadInput(pointer, "0 is nothing to measure.", "Give a number above 0, or leave the field out.")
    return number


def _per_cent(pointer: str, value: object) -> Fraction:
    number = _number(pointer, value)
    if number > 100:
        raise BadInput(pointer, f"{_shown(value)} per cent is more than the whole.", "Give a share from 0 to 100.")
    return number


def _layers(pointer: str, value: object) -> int:
    number = _number(pointer, value)
    if number.denominator != 1 or number < 1:
        raise BadInput(pointer, f"{_shown(value)} is no number of layers.", "Give a whole number from 1.")
    return number.numerator


def _flag(pointer: str, value: object) -> bool:
    if not isinstance(value, bool):
        raise BadInput(pointer, f"{_shown(value)} is neither true nor false.", "Give true or false, or leave it out.")
    return value


def _text(pointer: str, value: object) -> str:
    if not isinstance(value, str) or not value.strip() or len(value) > MOST_LETTERS or not value.isprintable():
        hint = f"Give a text of 1 to {MOST_LETTERS} printable characters."
        raise BadInput(pointer, f"{_shown(value)} is no text to use.", hint)
    return value


def _one_of(allowed: tuple[Choice, ...]) -> Parser[Choice]:
    def parse(pointer: str, value: object) -> Choice:
        for choice in allowed:
            if choice == value:
                return choice
        raise BadInput(pointer, f"{_shown(value)} is not known here.", _near(value, allowed))

    return parse


def _list_of(each: Parser[T]) -> Parser[tuple[T, ...]]:
    def parse(pointer: str, value: object) -> tuple[T, ...]:
        if not isinstance(value, list | tuple):
            raise BadInput(pointer, f"{_shown(value)} is not a list.", "Give a list, empty where there is none.")
        return tuple(each(f"{pointer}/{index}", item) for index, item in enumerate(value))

    return parse


def _markets(pointer: str, value: object) -> tuple[Market, ...]:
    return tuple(dict.fromkeys(_list_of(_one_of(MARKETS))(pointer, value)))


def _age_months(pointer: str, value: object) -> AgeBand:
    ages = _list_of(_number)(pointer, value) if isinstance(value, list | tuple) else (_number(pointer, value),)
    if len(ages) not in (1, 2) or ages[0] > ages[-1]:
        raise BadInput(pointer, f"{_shown(value)} is no range of ages.", "Give [youngest, oldest] in months.")
    return band_of(ages[0])


def _attachment(pointer: str, value: object) -> Attachment:
    known = _read_fields(pointer, value, ATTACHMENT)
    if "kind" not in known:
        raise BadInput(pointer, "The attachment has no kind.", "Give its kind, such as button, tie or label.")
    return Attachment(**known)  # type: ignore[arg-type]


def _fibre(pointer: str, value: object) -> Fibre:
    known = _read_fields(pointer, value, FIBRE)
    if "name" not in known:
        raise BadInput(pointer, "The fibre has no name.", "Give its name, such as wool or cotton.")
    return Fibre(**known)  # type: ignore[arg-type]


def _wash(pointer: str, value: object) -> Wash:
    return Wash(**_read_fields(pointer, value, WASH))  # type: ignore[arg-type]


def _chemistry(pointer: str, value: object) -> Chemistry:
    return Chemistry(**_read_fields(pointer, value, CHEMISTRY))  # type: ignore[arg-type]


ATTACHMENT: Mapping[str, Parser[object]] = {
    "kind": _text,
    "largest_mm": _number,
    "pull_n": _number,
    "torque_nm": _number,
    "metal": _flag,
}
FIBRE: Mapping[str, Parser[object]] = {"name": _text, "pct": _per_cent, "micron": _number}
WASH: Mapping[str, Parser[object]] = {"method": _text, "temp_c": _number}
CHEMISTRY: Mapping[str, Parser[object]] = {
    "baby_class": _flag,
    "ph": _number,
    "formaldehyde_mg_kg": _number,
    "azo_mg_kg": _number,
}
BANDS: Parser[AgeBand] = _one_of(AGE_BANDS)
PLACES: Parser[Use] = _one_of(USES)
MADE_WITH: Parser[Feature] = _one_of(FEATURES)
SAID: Parser[LabelField] = _one_of(LABEL_FIELDS)
FIELDS: Mapping[str, Parser[object]] = {
    "age_band": BANDS,
    "use": PLACES,
    "markets": _markets,
    "advice": _markets,
    "hole_mm": _number,
    "float_mm": _number,
    "tail_mm": _number,
    "loop_mm": _number,
    "loop_perimeter_mm": _number,
    "cord_free_mm": _number,
    "cord_thick_mm": _number,
    "ribbon_width_mm": _number,
    "attachments": _list_of(_attachment),
    "fibres": _list_of(_fibre),
    "halo": _flag,
    "raised_surface": _flag,
    "superwash": _flag,
    "wash": _wash,
    "mass_g": _number,
    "width_cm": _above_zero,
    "length_cm": _above_zero,
    "layers": _layers,
    "filled": _flag,
    "weighted": _flag,
    "enclosed_part": _flag,
    "openwork": _flag,
    "gaps": _flag,
    "gauge_sts_10cm": _above_zero,
    "mattress_width_cm": _above_zero,
    "monofilament": _flag,
    "features": _list_of(MADE_WITH),
    "chemistry": _chemistry,
    "flame_retardant": _flag,
    "decoration_pct": _per_cent,
    "says_pure": _flag,
    "sold": _flag,
    "label": _list_of(SAID),
    "moth_treatment": _flag,
    "medical_device": _flag,
    "emollient": _flag,
}
"""The fields of safety inputs; `age_months` is read beside them."""
