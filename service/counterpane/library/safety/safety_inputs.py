"""Safety inputs from JSON values: strict, by name, each refusal with its place and the next step."""

from __future__ import annotations

from collections.abc import Mapping

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
from counterpane.library.safety.measurements import measurement
from counterpane.library.values import (
    BadInput,
    Parser,
    above_zero,
    flag,
    layers,
    list_of,
    number,
    one_of,
    per_cent,
    read_fields,
    shown,
    text,
)


def inputs_of(content: Mapping[str, object], pointer: str = "") -> SafetyInputs:
    """Read safety inputs from JSON values at a pointer; a field that is absent or null is not known.

    Numbers are read by their decimal text. Of `age_band` and `age_months` together the stricter counts. BadInput for
    unknown fields, wrong types, numbers below 0 or not finite, and words that are not among those allowed.
    """
    known = read_fields(pointer, content, {**FIELDS, "age_months": _age_months})
    bands = [band for band in (known.pop("age_months", None), known.get("age_band")) if band is not None]
    if bands:
        known["age_band"] = min(bands, key=AGE_BANDS.index)
    return SafetyInputs(**known)  # type: ignore[arg-type]


def _markets(pointer: str, value: object) -> tuple[Market, ...]:
    return tuple(dict.fromkeys(list_of(one_of(MARKETS))(pointer, value)))


def _age_months(pointer: str, value: object) -> AgeBand:
    ages = list_of(number)(pointer, value) if isinstance(value, list | tuple) else (number(pointer, value),)
    if len(ages) not in (1, 2) or ages[0] > ages[-1]:
        raise BadInput(pointer, f"{shown(value)} is no range of ages.", "Give [youngest, oldest] in months.")
    return band_of(ages[0])


def _attachment(pointer: str, value: object) -> Attachment:
    known = read_fields(pointer, value, ATTACHMENT)
    if "kind" not in known:
        raise BadInput(pointer, "The attachment has no kind.", "Give its kind, such as button, tie or label.")
    return Attachment(**known)  # type: ignore[arg-type]


def _fibre(pointer: str, value: object) -> Fibre:
    known = read_fields(pointer, value, FIBRE)
    if "name" not in known:
        raise BadInput(pointer, "The fibre has no name.", "Give its name, such as wool or cotton.")
    return Fibre(**known)  # type: ignore[arg-type]


def _wash(pointer: str, value: object) -> Wash:
    return Wash(**read_fields(pointer, value, WASH))  # type: ignore[arg-type]


def _chemistry(pointer: str, value: object) -> Chemistry:
    return Chemistry(**read_fields(pointer, value, CHEMISTRY))  # type: ignore[arg-type]


ATTACHMENT: Mapping[str, Parser[object]] = {
    "kind": text,
    "largest_mm": number,
    "pull_n": number,
    "torque_nm": number,
    "metal": flag,
}
FIBRE: Mapping[str, Parser[object]] = {"name": text, "pct": per_cent, "micron": number}
WASH: Mapping[str, Parser[object]] = {"method": text, "temp_c": number}
CHEMISTRY: Mapping[str, Parser[object]] = {
    "baby_class": flag,
    "ph": number,
    "formaldehyde_mg_kg": number,
    "azo_mg_kg": number,
}
BANDS: Parser[AgeBand] = one_of(AGE_BANDS)
PLACES: Parser[Use] = one_of(USES)
MADE_WITH: Parser[Feature] = one_of(FEATURES)
SAID: Parser[LabelField] = one_of(LABEL_FIELDS)
FIELDS: Mapping[str, Parser[object]] = {
    "age_band": BANDS,
    "use": PLACES,
    "markets": _markets,
    "advice": _markets,
    "hole_mm": number,
    "float_mm": number,
    "tail_mm": number,
    "loop_mm": number,
    "loop_perimeter_mm": number,
    "cord_free_mm": number,
    "cord_thick_mm": number,
    "ribbon_width_mm": number,
    "attachments": list_of(_attachment),
    "fibres": list_of(_fibre),
    "halo": flag,
    "raised_surface": flag,
    "superwash": flag,
    "wash": _wash,
    "mass_g": number,
    "width_cm": above_zero,
    "length_cm": above_zero,
    "layers": layers,
    "filled": flag,
    "weighted": flag,
    "enclosed_part": flag,
    "openwork": flag,
    "gaps": flag,
    "gauge_sts_10cm": above_zero,
    "mattress_width_cm": above_zero,
    "monofilament": flag,
    "features": list_of(MADE_WITH),
    "chemistry": _chemistry,
    "flame_retardant": flag,
    "decoration_pct": per_cent,
    "says_pure": flag,
    "sold": flag,
    "label": list_of(SAID),
    "moth_treatment": flag,
    "medical_device": flag,
    "emollient": flag,
    "measured": list_of(measurement),
}
"""The fields of safety inputs; `age_months` is read beside them."""
