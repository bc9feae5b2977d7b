"""Lists of wards and charities over HTTP."""

from __future__ import annotations

from counterpane.api import examples
from counterpane.api.keeping import Noun, Said, Shapes, Shown
from counterpane.library.safety import kept_profiles
from counterpane_schema.profile import ProfileAnswer, ProfileContent, ProfilePage

PROFILES = Noun(
    kept_profiles.PROFILES,
    Shapes(ProfileContent, ProfilePage, ProfileAnswer),
    Shown(
        listed=examples.ALL,
        added=examples.PROFILE_ADDED,
        one=examples.PROFILE,
        revised=examples.PROFILE_REVISED,
        revision=examples.PROFILE_REVISION,
    ),
    Said(
        listed="A profile is a ward's or a charity's own list of what it asks of a piece, with its day and where it "
        "was read. A plan is held against it by its slug in `for.profile`; the answer says which revision that was.",
        added="The list stays theirs: it is kept with their day and their words, and it holds nothing about a child. "
        "An item names the input that judges it and one condition, or is kept in words alone.",
        got=", item by item",
    ),
    refused=("cannot-be-kept", "does-not-prove", "not-usable"),
)
