"""Members of a safety answer in words: for whom it was read, a list, measurements, and where sources differ.

The answer is JSON values of unknown origin: what is missing in it says nothing, and nothing is taken for granted.
"""

from __future__ import annotations

from collections.abc import Collection, Mapping, Sequence

from counterpane.craft.pattern import Held

Content = Mapping[str, object]
SHORT_HASH = 12
"""Letters of a hash that tell revisions apart for a reader; house."""


def read_for(read: object) -> str:
    """Say for which age, use and markets a record was read, "" where nothing of the three is known."""
    if not isinstance(read, Mapping):
        return ""
    markets = ", ".join(texts(read.get("markets")))
    told = (("age", read.get("age_band")), ("use", read.get("use")), ("markets", markets))
    if not any(value for _, value in told):
        return ""
    words = "; ".join(f"{name} {value or 'not said'}" for name, value in told)
    return f"Read for: {words}."


def held(profile: object) -> Held | None:
    """Return a list that the blanket was held against, each item with what it came to; None where there is none."""
    if not isinstance(profile, Mapping):
        return None
    items = tuple(
        f"{str(item.get('verdict')).capitalize()}: {item.get('says')} ({item.get('found')})"
        for item in objects(profile.get("items"))
    )
    about = str(profile.get("about") or "")
    return Held(whose(profile), (*items, *([about] if about else [])))


def whose(profile: Content) -> str:
    """Say whose list it is and of which day, and which revision of it where it is kept."""
    kept = f" ({profile['slug']}, revision {str(profile['sha256'])[:SHORT_HASH]})" if profile.get("slug") else ""
    return f"{profile.get('name')}, {profile.get('dated')}{kept}"


def measured(found: Sequence[Content]) -> tuple[str, ...]:
    """Say who measured what and when, on what, and what is not told."""
    return tuple(_measurement(each) for each in found)


def conflicts(found: Sequence[Content], spoken: Collection[str]) -> tuple[str, ...]:
    """Say on what sources of the rules that spoke differ, in one line each with every side and how it is treated."""
    return tuple(_conflict(each) for each in found if not set(spoken).isdisjoint(texts(each.get("rules"))))


def objects(values: object) -> tuple[Content, ...]:
    """Return the objects of a list of JSON values."""
    return tuple(value for value in _sequence(values) if isinstance(value, Mapping))


def texts(values: object) -> tuple[str, ...]:
    """Return the values of a list as texts."""
    return tuple(str(value) for value in _sequence(values))


def _measurement(each: Content) -> str:
    on = [str(each[name]) for name in ("yarn", "gauge", "wash") if each.get(name)]
    untold = texts(each.get("not_told"))
    said = (
        f"{each.get('what')} {_figure(each.get('value'))}: {each.get('by')}, {'; '.join([str(each.get('on')), *on])}."
    )
    lacks = f" Not told: {', '.join(untold)}." if untold else ""
    return said + lacks + ("" if each.get("counts") else " At another gauge: it counts for nothing here.")


def _conflict(each: Content) -> str:
    sides = "; ".join(
        f"{side.get('who')}: {side.get('says')} [{side.get('source')}]" for side in objects(each.get("statements"))
    )
    return f"On {each.get('about')} ({', '.join(texts(each.get('rules')))}): {sides}. {each.get('treated')}"


def _figure(value: object) -> str:
    return f"{value:g}" if isinstance(value, int | float) else str(value)


def _sequence(values: object) -> Sequence[object]:
    return values if isinstance(values, Sequence) and not isinstance(values, str) else ()
