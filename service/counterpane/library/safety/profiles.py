"""Lists of wards and charities: read from JSON values, and a piece held against one."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from typing import Any

from counterpane.craft.safety import Held, Item, Profile, SafetyInputs, hold
from counterpane.craft.safety.profiles import FIGURES, FLAGS, WORDS
from counterpane.library.values import (
    BadInput,
    Parser,
    day,
    decimal_of,
    flag,
    list_of,
    number,
    one_of,
    read_fields,
    text,
)

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


@dataclass(frozen=True, slots=True)
class Listed:
    """A list with the slug and the hash of its revision; None for one that is sent whole."""

    profile: Profile
    slug: str | None = None
    sha256: str | None = None


def profile_of(value: object, pointer: str = "") -> Profile:
    """Return a list from its content; BadInput at the place of what does not hold."""
    known = read_fields(pointer, value, PROFILE)
    for name in PROFILE:
        if name not in known:
            raise BadInput(
                f"{pointer}/{name}", f"The list does not tell {name!r}.", "Give name, dated, source and items."
            )
    if not known["items"] or len(known["items"]) > MOST_ITEMS:  # type: ignore[arg-type]
        raise BadInput(f"{pointer}/items", "The list has no items or too many.", f"Give 1 to {MOST_ITEMS} items.")
    return Profile(**known)  # type: ignore[arg-type]


def held_json(listed: Listed, inputs: SafetyInputs) -> Answer:
    """Hold a piece against a list and return the verdicts as JSON values, in the order of the list.

    The slug and the hash say which revision of a kept list it was; that never changes.
    """
    profile = listed.profile
    return {
        "slug": listed.slug,
        "sha256": listed.sha256,
        "name": profile.name,
        "dated": profile.dated,
        "source": profile.source,
        "about": THEIRS,
        "items": [_held(each) for each in hold(profile, inputs)],
    }


def content_of(profile: Profile) -> Answer:
    """Return a profile as the JSON values that `profile_of` reads; numbers keep their decimal text."""
    items = [_item_json(item) for item in profile.items]
    return {"name": profile.name, "dated": profile.dated, "source": profile.source, "items": items}


def _item_json(item: Item) -> Answer:
    told = {name: getattr(item, name) for name in ITEM if getattr(item, name) is not None}
    shown = {name: decimal_of(value) for name, value in told.items() if name in BOUNDS}
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
