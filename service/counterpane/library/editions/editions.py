"""Editions: what is published of a kept recipe, numbered and dated, with the words as they were printed that day.

The editions of a recipe are a chain under its slug; none ever changes, and the next one brings the erratum of the one
before. What is hashed holds every line and the whole text, so that an edition can be read and compared for ever.
"""

from __future__ import annotations

import json
from collections.abc import Iterator, Mapping
from dataclasses import asdict, dataclass, replace
from decimal import Decimal
from typing import Any, get_args

import orjson

from counterpane.craft.constructions import Plan
from counterpane.craft.erratum.lines import lines_of
from counterpane.craft.pattern import Pattern
from counterpane.craft.stitches import Terms
from counterpane.library.editions import errata
from counterpane.library.errors import NotFound, Stale, Taken, WrittenOtherwise
from counterpane.library.keeping.objects import canonical, digest, json_bytes
from counterpane.library.keeping.once import only_once
from counterpane.library.keeping.pinning import pins_in, request_of
from counterpane.library.patterns.pages import pictures_for
from counterpane.library.plans import grading, planning
from counterpane.library.plans.bench import bench_of
from counterpane.library.ports import Done, Entry, Holder, Kept, Once, Shelf
from counterpane.library.review import standing
from counterpane.library.services import Services
from counterpane.library.values import BadInput

SHELF: Shelf = "edition"
ALL_TERMS: tuple[Terms, ...] = get_args(Terms)
OF_SIZES = ("sizes", "sample", "borders")
ON_A_CARD = ("recipe", "number", "date", "reason", "revision", "sha256", "href")

Content = Mapping[str, Any]


@dataclass(frozen=True, slots=True)
class Made:
    """A pattern in one size, "" where it has no name, and the plan that it writes."""

    size: str
    plan: Plan
    pattern: Pattern


def publish(services: Services, slug: str, content: Content, by: str) -> Kept:
    """Publish the next edition of a recipe; raise NotFound, BadInput, what planning raises, Taken and Busy.

    `content` may name the `revision` of the recipe, else it is the latest; the `date`, else it is today; `sizes` with
    `sample` and `borders`, as a grade has them; the `reason` and a `note` for the erratum.
    """
    return _publish(services, slug, content, by, None)[0]


def publish_once(
    services: Services, slug: str, content: Content, holder: Holder, once: Once | None
) -> tuple[Kept, bool]:
    """Publish the next edition, or return the one that was published under this key; say whether it was before.

    Raise what `publish` raises, NotTheirs for a contributor who did not add the recipe, and KeyReused.
    """
    standing.require_owner(services, "recipe", slug, holder)
    return _publish(services, slug, content, holder.name, once)


def _publish(services: Services, slug: str, content: Content, by: str, once: Once | None) -> tuple[Kept, bool]:
    _, done = only_once(services.store, once, lambda: _kept(services, slug, content, by, once))
    if done is None:
        return services.store.latest(SHELF, slug), False
    return services.store.revision(SHELF, done.slug, done.sha256), True


def _kept(services: Services, slug: str, content: Content, by: str, once: Once | None) -> Done | None:
    recipe = _recipe(services, slug, content.get("revision"))
    chain = history(services, slug)
    entry = _entry(services, recipe, chain[-1] if chain else None, content, by)
    try:
        if chain:
            return services.store.revise(entry, chain[-1].sha256, once)
        return services.store.add(entry, once=once)
    except (Stale, Taken):
        message = f"Edition {len(chain) + 1} of {slug!r} was published by somebody else in the meantime."
        raise Taken(message, "Look at it, and publish the next one if it lacks what yours has.") from None


def history(services: Services, slug: str) -> tuple[Kept, ...]:
    """Return all editions of a recipe, the first one first; raise NotFound where there is no such recipe."""
    try:
        return services.store.history(SHELF, slug)
    except NotFound:
        services.store.latest("recipe", slug)
        return ()


def cards(services: Services, slug: str) -> list[dict[str, Any]]:
    """Return the line of each edition of a recipe, the first one first; raise NotFound."""
    bodies = (orjson.loads(kept.body) for kept in history(services, slug))
    return [{name: body[name] for name in ON_A_CARD} for body in bodies]


def find(services: Services, slug: str, number: int) -> Kept:
    """Return an edition; raise NotFound."""
    chain = history(services, slug)
    if not 1 <= number <= len(chain):
        there = f"It has {len(chain)}, the latest is the last." if chain else "Nothing of it is published yet."
        raise NotFound(f"The recipe {slug!r} has no edition {number}.", there)
    return chain[number - 1]


def content_of(services: Services, kept: Kept) -> dict[str, Any]:
    """Return all that an edition holds, with its lines and texts."""
    whole: dict[str, Any] = orjson.loads(services.store.object(kept.sha256))
    shown = json.loads(kept.body, parse_float=Decimal)  # What is hashed has fractions, which no request has.
    return whole | {name: shown[name] for name in OF_SIZES if name in shown}


def erratum(services: Services, slug: str, number: int, since: int | None, terms: Terms) -> dict[str, Any]:
    """Return the erratum from edition `since` to this one, from the one before if it is None; raise NotFound."""
    whole = content_of(services, find(services, slug, number))
    first = number - 1 if since is None else since
    if first >= number or first < 1:
        message = f"An erratum leads from an earlier edition to edition {number}, and {first} is none."
        raise NotFound(message, "Name an edition that came before it.")
    if first == number - 1:
        published: dict[str, Any] = whole["erratum"][terms]
        return published
    between = [content_of(services, find(services, slug, each)) for each in range(first + 1, number + 1)]
    old = content_of(services, find(services, slug, first))
    return errata.between(old, whole, terms, between)


def written(services: Services, whole: Content, terms: Terms, size: str | None) -> Made:
    """Return an edition's pattern with the plan of it.

    Raise NotFound, and WrittenOtherwise where this program writes it otherwise than it was published.
    """
    kept = kept_text(whole, terms, size)
    recipe = _recipe(services, whole["recipe"], whole["revision"])
    sizes = {each.size: each for each in in_sizes(services, titled(recipe), whole, terms)}
    made = _as_edition(sizes[kept["size"]], whole)
    if hash_of(services, made.pattern) != kept["sha256"]:
        message = f"This program writes the recipe otherwise than edition {whole['number']} was published."
        raise WrittenOtherwise(
            message, "Take it as text, which is kept as it was printed, or publish the next edition."
        )
    return made


def _as_edition(made: Made, whole: Content) -> Made:
    return replace(made, pattern=replace(made.pattern, edition=stamp(whole)))


def kept_text(whole: Content, terms: Terms, size: str | None) -> dict[str, Any]:
    """Return what is kept of the pattern in these terms and in a size, the first if none is named; raise NotFound."""
    found = [each for each in whole["patterns"] if each["terms"] == terms]
    for each in found:
        if size is None or each["size"] == size:
            return dict(each)
    names = ", ".join(each["size"] for each in found if each["size"]) or "it has one size, which has no name"
    raise NotFound(f"The edition has no size {size!r}.", f"Its sizes: {names}.")


def stamp(whole: Content) -> str:
    """Return how an edition is named on each page."""
    return f"Edition {whole['number']}, {whole['date']}"


def hash_of(services: Services, pattern: Pattern) -> str:
    """Return the SHA-256 of the canonical JSON of a pattern's data, its decimals as fractions."""
    return digest(canonical(errata.without_floats(services.as_data(pattern, ()))))


def _recipe(services: Services, slug: str, sha256: str | None) -> Kept:
    return services.store.revision("recipe", slug, sha256) if sha256 else services.store.latest("recipe", slug)


def _entry(services: Services, recipe: Kept, before: Kept | None, content: Content, by: str) -> Entry:
    old = content_of(services, before) if before else None
    return entry_of_whole(services, _whole(services, recipe, content, old, before), by, "accepted")


def entry_of_whole(services: Services, whole: Content, by: str, status: str) -> Entry:
    """Return an edition with all that it holds as the store keeps it; raise Unkeepable."""
    data, at = canonical(whole), services.now()
    sha256, slug = digest(data), whole["recipe"]
    href = f"/v1/recipes/{slug}/editions/{whole['number']}"
    told = {"sha256": sha256, "etag": f'"{sha256}"', "href": href, "published": at}
    body = {**whole, "patterns": [_without(each, "text", "lines") for each in whole["patterns"]], **told}
    card = {name: body[name] for name in ON_A_CARD}
    return Entry(
        shelf=SHELF,
        slug=slug,
        kind=SHELF,
        sha256=sha256,
        content=data,
        body=json_bytes(body),
        card=json_bytes(card),
        title=f"{slug.replace('-', ' ')} {stamp(whole)}",
        words="\n".join((whole["note"], *whole["pins"])),
        at=at,
        by=by,
        status=status,
    )


def _without(content: Content, *names: str) -> dict[str, Any]:
    return {name: value for name, value in content.items() if name not in names}


def _whole(
    services: Services, recipe: Kept, content: Content, old: Content | None, before: Kept | None
) -> dict[str, Any]:
    number, day = (old["number"] + 1 if old else 1), content.get("date") or services.now()[:10]
    if old and day < old["date"]:
        message = f"Edition {old['number']} is of {old['date']}, and {day} is before that."
        raise BadInput("/date", message, "Give the day on which this edition is published.")
    head = {
        "recipe": recipe.slug,
        "number": number,
        "date": day,
        "reason": content.get("reason") or "correction",
        "note": content.get("note") or "",
        "revision": recipe.sha256,
        "pins": pins_in(recipe),
        "previous": before.sha256 if before else None,
        **{name: content[name] for name in OF_SIZES if name in content},
    }
    whole = head | {"patterns": list(_published(services, recipe, content, head))}
    if old:
        _refuse_the_same(whole, old)
    return whole | {
        "erratum": {terms: errata.between(old, whole, terms, [whole]) for terms in ALL_TERMS} if old else None
    }


def _refuse_the_same(whole: Content, old: Content) -> None:
    """Refuse an edition that says what the one before says, as when a request is sent twice."""
    texts = [[each["text"].replace(stamp(edition), "") for each in edition["patterns"]] for edition in (whole, old)]
    if texts[0] == texts[1]:
        message = f"Edition {old['number']} says the same already."
        raise BadInput("/revision", message, "Revise the recipe first, or use the edition that there is.")


def _published(services: Services, recipe: Kept, grade: Content, head: Content) -> Iterator[dict[str, Any]]:
    for terms in ALL_TERMS:
        for each in in_sizes(services, titled(recipe), grade, terms):
            pattern = _as_edition(each, head).pattern
            yield {
                "terms": terms,
                "size": each.size,
                "sha256": hash_of(services, pattern),
                "text": text_of(services, replace(each, pattern=pattern)),
                "lines": [asdict(line) for line in lines_of(pattern)],
            }


def text_of(services: Services, made: Made) -> str:
    """Return a pattern as plain text, as an edition keeps it."""
    drawn = pictures_for(made.plan, made.pattern, services.vocabulary, "text")
    return services.presses["text"](made.pattern, drawn)


def titled(recipe: Kept) -> dict[str, Any]:
    """Return the plan request of a recipe with the title of its pattern."""
    return request_of(recipe) | {"title": orjson.loads(recipe.body)["name"]}


def in_sizes(services: Services, request: Content, grade: Content, terms: Terms) -> Iterator[Made]:
    """Give the pattern of a request in each size of a grade; one without sizes has that of the request alone."""
    asked = {**request, "terms": terms}
    if "sizes" not in grade:
        plan = planning.made(services, planning.planned_part(request))
        yield Made("", plan, planning.pattern_of(plan, asked, services.known))
        return
    graded = asked | {name: grade[name] for name in OF_SIZES if name in grade}
    for each in grading.graded(graded, bench_of(services, graded)):
        yield Made(each.name, each.plan, each.pattern)
