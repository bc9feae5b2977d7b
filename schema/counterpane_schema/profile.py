"""A ward's or a charity's own list, dated, against which a piece can be held."""

from __future__ import annotations

from typing import Any

from marshmallow import fields, validate

from counterpane_schema.fields import Number, Sha256, Slug, Text, Told, Whole, Word, YesNo
from counterpane_schema.forms import Closed, Open
from counterpane_schema.kept import STATUSES, KeptContent

FIGURES = (
    *("hole_mm", "float_mm", "tail_mm", "loop_mm", "loop_perimeter_mm", "cord_free_mm", "mass_g", "gsm"),
    *("width_cm", "length_cm", "layers", "wash.temp_c", "gauge_sts_10cm"),
)
FLAGS = (
    *("openwork", "gaps", "halo", "raised_surface", "superwash", "filled", "weighted", "enclosed_part"),
    *("monofilament", "flame_retardant", "moth_treatment"),
)
WORDS = ("fibres", "attachments", "wash.method")


def words(name: str) -> fields.List[Any]:
    """Return the member of this name: a list of words."""
    each = Text(most=200)
    return fields.List(each, allow_none=True, validate=validate.Length(1, 100), data_key=name, attribute=name)


class Item(Closed):
    """One line of a list in its own words; with an input and a condition it is judged, without it is kept.

    A figure takes `at_least`, `at_most` or `under`; a yes or no takes `wants`; fibres, attachments and ways of washing
    take `only` or `none_of`.
    """

    says = Text(required=True, most=200)
    input = Word(*FIGURES, *FLAGS, *WORDS, allow_none=True)
    at_least = Number(allow_none=True)
    at_most = Number(allow_none=True)
    under = Number(allow_none=True)
    wants = YesNo(allow_none=True)
    only_ = words("only")
    none_of_ = words("none_of")


class Profile(Closed):
    """A list with whose it is, its day, and where it was read."""

    name = Text(required=True, most=200)
    dated = Text(required=True, most=10, least=10)
    source = Text(required=True, most=200)
    items = fields.List(fields.Nested(Item), required=True, validate=validate.Length(1, 100))


class ProfileContent(KeptContent, Profile):
    """A list as a person sends it to be kept; it says what a place asks of a piece, and nothing of a child."""

    slug = Slug(required=True)
    href = Told()
    about = Told()


class NamedProfile(Closed):
    """A kept list, at one of its revisions or at the latest."""

    profile = Slug(required=True)
    revision = Sha256(metadata={"description": "The hash of the revision meant; the latest if not given."})


class ProfileCard(Open):
    """A list's line in the list of lists."""

    slug = Slug(required=True)
    name = Text(required=True)
    dated = Text(required=True)
    source = Text(required=True)
    status = Word(*STATUSES, required=True)
    sha256 = Sha256(required=True)
    href = Text(required=True)


class ProfilePage(Open):
    """A page of lists."""

    items = fields.List(fields.Nested(ProfileCard), required=True)
    next = Text(required=True, allow_none=True)
    total = Whole(least=0, metadata={"description": "With `Prefer: count=exact`: how many the whole list holds."})


class ProfileAnswer(ProfileCard):
    """A list with its items, as they can be sent back."""

    items = fields.List(fields.Dict(), required=True)
    about = Text(required=True)
    changed = Text(required=True)
    etag = Text(required=True)
