"""Lists of wards and charities over HTTP."""

from __future__ import annotations

from counterpane.api import examples
from counterpane.api.operations import Answer, Call, operation
from counterpane.api.sending import as_json
from counterpane.library import profiles
from counterpane_schema.profile import ProfileAnswer, ProfileList


@operation("GET", "/v1/profiles", tag="safety", answer=ProfileList, examples=examples.ALL)
def list_profiles(call: Call) -> Answer:
    """List the lists of wards and charities that are kept here, each with its day and where it was read."""
    items = [{**card, "href": f"/v1/profiles/{card['slug']}"} for card in profiles.cards(call.services.profiles)]
    return as_json({"items": items})


@operation("GET", "/v1/profiles/<slug>", tag="safety", answer=ProfileAnswer, examples=examples.PROFILE)
def get_profile(call: Call) -> Answer:
    """Get a list of a ward or a charity, item by item.

    A plan is held against it by its slug in `for.profile`, or against a list of your own that is sent there whole.
    """
    slug = call.path["slug"]
    return as_json({**profiles.get(call.services.profiles, slug), "href": f"/v1/profiles/{slug}"})
