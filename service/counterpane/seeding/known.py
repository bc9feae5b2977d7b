"""All that ships with the program beside its components, put together once."""

from __future__ import annotations

from functools import cache

from counterpane.library.plans.known import Known
from counterpane.library.safety.profile_finding import found_among
from counterpane.seeding import load_sources, load_vocabulary
from counterpane.seeding.facts import facts_by_name
from counterpane.seeding.profiles import load_profiles


@cache
def load_known() -> Known:
    """Load what ships; SeedFault at the first that does not hold."""
    sources = {source.slug: source.title for source in load_sources().values()}
    return Known(load_vocabulary(), facts_by_name(), found_among(load_profiles()), sources)
