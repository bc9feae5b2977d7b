"""What is known of a piece and of the child it is for, and what the safety rules say."""

from __future__ import annotations

from marshmallow import fields, validate

from counterpane_schema.choices import USES
from counterpane_schema.fields import Either, Number, Slug, Text, Whole, Word, YesNo
from counterpane_schema.forms import Closed, Open
from counterpane_schema.profile import NamedProfile, Profile

AGE_BANDS = ("preterm", "0-3m", "3-12m", "12-24m", "24-36m", "36m+")
MARKETS = ("US", "CA", "UK", "EU", "NL", "AU", "NZ", "CN", "JP")
MEASURABLE = (
    *("hole_mm", "float_mm", "tail_mm", "loop_mm", "loop_perimeter_mm", "cord_free_mm", "cord_thick_mm"),
    *("ribbon_width_mm", "mass_g"),
)
FEATURES = ("sleeves", "neck-hole", "hood", "zip", "sack", "head", "rattle", "teether")
LABEL_FIELDS = ("fibre", "maker", "batch", "origin", "tracking", "certificate", "bilingual", "care", "infant-class")


class Attachment(Closed):
    """Something that is fixed to the blanket."""

    kind = Text(required=True)
    largest_mm = Number(allow_none=True)
    pull_n = Number(allow_none=True)
    torque_nm = Number(allow_none=True)
    metal = YesNo(allow_none=True)


class Fibre(Closed):
    """One fibre of the yarn."""

    name = Text(required=True)
    pct = Number(allow_none=True, most=100)
    micron = Number(allow_none=True)


class Wash(Closed):
    """How the finished piece may be washed."""

    method = Text(allow_none=True)
    temp_c = Number(allow_none=True)


class Chemistry(Closed):
    """What is shown of the yarn's chemistry: a certificate of the class for babies, or figures of a laboratory."""

    baby_class = YesNo(allow_none=True)
    ph = Number(allow_none=True)
    formaldehyde_mg_kg = Number(allow_none=True)
    azo_mg_kg = Number(allow_none=True)


class MeasuredGauge(Closed):
    """The gauge of the piece that was measured, over 10 cm if not said otherwise."""

    stitches = Number(required=True, above=True)
    rows = Number(required=True, above=True)
    over_cm = Number(above=True, allow_none=True)


class Measured(Closed):
    """What somebody measured, and when; on which yarn, at which gauge and after which wash, as far as it is told."""

    what = Word(*MEASURABLE, required=True)
    value = Number(required=True)
    by = Text(required=True, most=200)
    on = Text(required=True, most=10, least=10, metadata={"description": "The day, such as 2026-11-30."})
    yarn = Text(allow_none=True, most=200)
    gauge = fields.Nested(MeasuredGauge, allow_none=True)
    wash = Text(allow_none=True, most=200)


class SafetyInputs(Closed):
    """All that the safety rules look at; what is left out is not known, which is never a pass.

    `profile` is a list of a ward or charity to hold the piece against: its slug, its slug with the hash of a revision,
    or the list itself.
    """

    age_band = Word(*AGE_BANDS, allow_none=True)
    age_months = Either(
        Number(most=1_200),
        fields.List(Number(most=1_200), validate=validate.Length(1, 2)),
        said="Write months, or [youngest, oldest] in months.",
        allow_none=True,
    )
    use = Word(*USES, allow_none=True)
    markets = fields.List(Word(*MARKETS), allow_none=True, validate=validate.Length(0, 20))
    advice = fields.List(Word(*MARKETS), allow_none=True, validate=validate.Length(0, 20))
    hole_mm = Number(allow_none=True)
    float_mm = Number(allow_none=True)
    tail_mm = Number(allow_none=True)
    loop_mm = Number(allow_none=True)
    loop_perimeter_mm = Number(allow_none=True)
    cord_free_mm = Number(allow_none=True)
    cord_thick_mm = Number(allow_none=True)
    ribbon_width_mm = Number(allow_none=True)
    attachments = fields.List(fields.Nested(Attachment), allow_none=True, validate=validate.Length(0, 100))
    fibres = fields.List(fields.Nested(Fibre), allow_none=True, validate=validate.Length(0, 100))
    halo = YesNo(allow_none=True)
    raised_surface = YesNo(allow_none=True)
    superwash = YesNo(allow_none=True)
    wash = fields.Nested(Wash, allow_none=True)
    mass_g = Number(allow_none=True)
    width_cm = Number(allow_none=True, above=True)
    length_cm = Number(allow_none=True, above=True)
    layers = Whole(allow_none=True, least=1)
    filled = YesNo(allow_none=True)
    weighted = YesNo(allow_none=True)
    enclosed_part = YesNo(allow_none=True)
    openwork = YesNo(allow_none=True)
    gaps = YesNo(allow_none=True)
    gauge_sts_10cm = Number(allow_none=True, above=True)
    mattress_width_cm = Number(allow_none=True, above=True)
    monofilament = YesNo(allow_none=True)
    features = fields.List(Word(*FEATURES), allow_none=True, validate=validate.Length(0, 20))
    chemistry = fields.Nested(Chemistry, allow_none=True)
    flame_retardant = YesNo(allow_none=True)
    decoration_pct = Number(allow_none=True, most=100)
    says_pure = YesNo(allow_none=True)
    sold = YesNo(allow_none=True)
    label = fields.List(Word(*LABEL_FIELDS), allow_none=True, validate=validate.Length(0, 20))
    moth_treatment = YesNo(allow_none=True)
    medical_device = YesNo(allow_none=True)
    emollient = YesNo(allow_none=True)
    measured = fields.List(fields.Nested(Measured), allow_none=True, validate=validate.Length(0, 100))
    profile = Either(
        Slug(),
        fields.Nested(Profile),
        fields.Nested(NamedProfile),
        said='Write the slug of a list, {"profile": "…", "revision": "…"}, or the list itself.',
        allow_none=True,
    )


class SafetyFinding(Open):
    """What a safety rule says."""

    rule = Text(required=True)
    reference = Text(required=True, allow_none=True)
    severity = Word("stop", "warn", "note", required=True)
    basis = Word("published", "borrowed", "house", "memory", required=True, allow_none=True)
    markets = fields.List(Text(), required=True, allow_none=True)
    message = Text(required=True, lines=True, most=10_000)
    source = Text(required=True, lines=True, most=10_000)


class SafetyAnswer(Open):
    """What the rules say, and which were not assessed; that nothing is said never means that a piece is safe.

    `measured` repeats who measured what, and `profile` gives the verdicts of a list, where they were sent.
    """

    findings = fields.List(fields.Nested(SafetyFinding), required=True)
    assessed = fields.List(Text(), required=True)
    not_assessed = fields.List(Text(), required=True)
    not_applicable = fields.List(Text(), required=True)
    measured = fields.List(fields.Dict())
    profile = fields.Dict()
