"""Lists of wards and charities: read from JSON values, found by their slugs, and a piece held against one."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Any

from counterpane.craft.safety import Held, Item, Profile, SafetyInputs, hold
from counterpane.craft.safety.profiles import FIGURES, FLAGS, WORDS
from counterpane.library.errors import NotFound
from counterpane.library.near import nearest
from counterpane.library.values import BadInput, Parser, day, flag, list_of, number, one_of, read_fields, text

Profiles = Mapping[str, Profile]
Answer = dict[str, Any]

THEIRS = "The list is this place's own, of this day. It decides, and nothing here replaces asking it again."
BOUNDS = ("at_least", "at_most", "under")
CONDITIONS: Mapping[str, tuple[str, ...]] = {
    **dict.fromkeys(FIGURES, BOUNDS),
    **dict.fromkeys(FLAGS, ("wants",)),
    **dict.fromkeys(WORDS, ("only", "none_of")),
}
"""The conditions that suit each input."""
MOST_ITEMS = 100
"""House: the longest list."""


def profile_of(value: object, profiles: Profiles, pointer: str = "") -> Profile:
    """Return a profile by its slug or from its content; BadInput for an unknown slug, or for what does not hold."""
    if isinstance(value, str):
        if value not in profiles:
            hint = nearest(value[:80], profiles) or "Send the list itself: name, dated, source, items."
            raise BadInput(pointer, f"No list is called {value[:80]!r}.", hint)
        return profiles[value]
    known = read_fields(pointer, value, PROFILE)
    for name in PROFILE:
        if name not in known:
            raise BadInput(
                f"{pointer}/{name}", f"The list does not tell {name!r}.", "Give name, dated, source and items."
            )
    if not known["items"] or len(known["items"]) > MOST_ITEMS:  # type: ignore[arg-type]
        raise BadInput(f"{pointer}/items", "The list has no items or too many.", f"Give 1 to {MOST_ITEMS} items.")
    return Profile(**known)  # type: ignore[arg-type]


def held_json(profile: Profile, inputs: SafetyInputs) -> Answer:
    """Hold a piece against a list and return the verdicts as JSON values, in the order of the list."""
    return {
        "name": profile.name,
        "dated": profile.dated,
        "source": profile.source,
        "about": THEIRS,
        "items": [_held(each) for each in hold(profile, inputs)],
    }


def cards(profiles: Profiles) -> list[Answer]:
    """Return what a list of profiles says of each."""
    return [
        {"slug": slug, "name": each.name, "dated": each.dated, "source": each.source} for slug, each in profiles.items()
    ]


def get(profiles: Profiles, slug: str) -> Answer:
    """Return a profile with its items as they can be sent back; NotFound with the nearest slug."""
    if slug not in profiles:
        raise NotFound(f"No list is called {slug!r}.", nearest(slug, profiles))
    profile = profiles[slug]
    return {"slug": slug, **content_of(profile), "about": THEIRS}


def content_of(profile: Profile) -> Answer:
    """Return a profile as the JSON values that `profile_of` reads."""
    items = [_item_json(item) for item in profile.items]
    return {"name": profile.name, "dated": profile.dated, "source": profile.source, "items": items}


def _item_json(item: Item) -> Answer:
    told = {name: getattr(item, name) for name in ITEM if getattr(item, name) is not None}
    shown = {name: float(value) for name, value in told.items() if name in BOUNDS}
    return told | shown | {name: list(told[name]) for name in ("only", "none_of") if name in told}


def _held(held: Held) -> Answer:
    return {"says": held.item.says, "input": held.item.input, "verdict": held.verdict, "found": held.found}


def _item(pointer: str, value: object) -> Item:
    known = read_fields(pointer, value, ITEM)
    if "says" not in known:
        raise BadInput(f"{pointer}/says", "The item has no words.", "Write what the list says, in its own words.")
    given = [name for name in ITEM if name in known and name not in ("says", "input")]
    allowed = CONDITIONS.get(str(known.get("input")), ())
    if bool(given) is not bool(allowed) or not set(given) <= set(allowed):
        hint = (
            f"Give one or more of: {', '.join(allowed)}." if allowed else "Name the input, or leave the condition out."
        )
        raise BadInput(pointer, "The item's condition does not suit its input.", hint)
    return Item(**known)  # type: ignore[arg-type]


NAMES: Parser[str] = one_of((*FIGURES, *FLAGS, *WORDS))
ITEM: Mapping[str, Parser[object]] = {
    "says": text,
    "input": NAMES,
    "at_least": number,
    "at_most": number,
    "under": number,
    "wants": flag,
    "only": list_of(text),
    "none_of": list_of(text),
}
PROFILE: Mapping[str, Parser[object]] = {"name": text, "dated": day, "source": text, "items": list_of(_item)}
