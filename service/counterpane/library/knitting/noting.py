"""Noting what becomes of a pattern: test knits, answers given to knitters, and records of finished pieces.

Each belongs to one revision of a recipe, that of an edition or the latest, and to one of its sizes. Nothing of a child
is kept: no form here has a member for it. A piece is known by its plan, its day and its dye lot.
"""

from __future__ import annotations

import json
from collections.abc import Iterator, Mapping
from dataclasses import asdict, dataclass, replace
from decimal import Decimal
from typing import Any

from counterpane.craft.constructions import Plan
from counterpane.library.editions import editions
from counterpane.library.errors import Gone, NotFound, NotTheirs
from counterpane.library.keeping.objects import digest, json_bytes
from counterpane.library.keeping.once import only_once
from counterpane.library.keeping.pinning import request_of
from counterpane.library.knitting.jottings import Jotting, Noted, Sort
from counterpane.library.plans import planning
from counterpane.library.ports import ROLES, Done, Holder, Kept, Once
from counterpane.library.review import standing
from counterpane.library.services import Services
from counterpane.library.values import BadInput

Content = Mapping[str, Any]
Answer = dict[str, Any]

PATHS: Mapping[Sort, str] = {"test-knit": "test-knits", "answer": "answers", "piece": "pieces"}
"""What several of each sort are called in addresses."""
NOTHING = b"{}"
"""What is kept of a jotting that was taken back."""
LEAST = Decimal("0.001")
"""House: the least figure above 0."""
AT_ONCE = 200
MOST_READ = 1_000
"""House: the most jottings of one sort about one recipe that are looked over at once."""


@dataclass(frozen=True, slots=True)
class Which:
    """Which jotting, or which of them: of a sort, about a recipe; 0 is no number."""

    sort: Sort
    recipe: str
    number: int = 0


@dataclass(frozen=True, slots=True)
class Based:
    """What a jotting is about: a revision of a recipe, and the edition and size that was knitted from, if any."""

    recipe: Kept
    edition: Content | None = None
    size: str = ""


def add_once(services: Services, which: Which, content: Content, by: str, once: Once | None) -> tuple[Answer, bool]:
    """Note something about a recipe, or return what was noted under this key; say whether it was before.

    Raise NotFound, BadInput, KeyReused, and Gone where it was taken back since.
    """

    def noted() -> int | Done:
        body, revision = _body(services, which, content)
        now, whose = services.now(), _whose(content) or by
        jotting = Jotting(which.sort, which.recipe, revision, now, by, whose, now, digest(body), body)
        return services.store.put_jotting(jotting, once)

    number, done = only_once(services.store, once, noted)
    return told_of(services, services.store.jotting(number)), done is not None


def change(services: Services, which: Which, content: Content, expected: str | None, holder: Holder) -> Answer:
    """Say something else in a jotting; raise NotFound, BadInput, NotTheirs and Stale."""
    before = theirs(services, which, holder)
    body, revision = _body(services, which, content)
    told = replace(before, revision=revision, changed=services.now(), sha256=digest(body), body=body)
    services.store.turn_jotting(replace(told, whose=_whose(content)), expected or before.sha256, holder.name)
    return told_of(services, services.store.jotting(which.number))


def take_back(services: Services, which: Which, say: str, holder: Holder) -> Answer:
    """Take a jotting back for a reason: what it said is kept no longer; raise NotFound, BadInput and NotTheirs."""
    return take_back_once(services, which, say, holder, None)[0]


def take_back_once(
    services: Services, which: Which, say: str, holder: Holder, once: Once | None
) -> tuple[Answer, bool]:
    """Take a jotting back, or tell that it was taken back under this key; say whether it was before.

    Raise what `take_back` raises, and KeyReused.
    """
    _, done = only_once(services.store, once, lambda: _taken_back(services, which, say, holder, once))
    left = services.store.taken_back(which.number)
    return {**asdict(which), "taken_back": left.taken_back, "changed": left.changed}, done is not None


def _taken_back(services: Services, which: Which, say: str, holder: Holder, once: Once | None) -> Done | None:
    before = theirs(services, which, holder)
    if not say.strip():
        raise BadInput("/say", "Nothing is said.", "Say why it is taken back.")
    told = replace(before, changed=services.now(), sha256=digest(NOTHING), body=NOTHING, taken_back=say.strip())
    return services.store.turn_jotting(replace(told, whose=""), before.sha256, holder.name, once)


def theirs(services: Services, which: Which, holder: Holder) -> Jotting:
    """Return a jotting that the holder may change, who wrote it down or is a reviewer; raise NotFound and NotTheirs."""
    found = find(services, which)
    if ROLES.index(holder.role) < ROLES.index("reviewer") and services.store.names().get(found.by) != holder.name:
        raise NotTheirs(f"Jotting {which.number} was written down by somebody else.")
    return found


def find(services: Services, which: Which) -> Jotting:
    """Return a jotting of this sort about this recipe; raise NotFound, and Gone where it was taken back."""
    try:
        return _of(which, services.store.jotting(which.number))
    except Gone:
        _of(which, services.store.taken_back(which.number))
        raise


def _of(which: Which, found: Jotting) -> Jotting:
    if (found.sort, found.recipe) != (which.sort, which.recipe):
        message = f"{which.number} is no {which.sort} of {which.recipe!r}."
        raise NotFound(message, f"GET /v1/recipes/{which.recipe}/{PATHS[which.sort]} lists them.")
    return found


def require_recipe(services: Services, slug: str) -> None:
    """Raise NotFound where there is no such recipe, and Gone where it was withdrawn."""
    services.store.latest("recipe", slug)


def page(services: Services, which: Which, after: int, limit: int) -> tuple[list[Answer], int | None]:
    """Return a page of jottings by number, and the number that the next page follows."""
    found = services.store.jottings(Noted(which.sort, which.recipe, after, limit + 1))
    names = services.store.names()
    items = [_told(each, names) for each in found[:limit]]
    return items, found[limit - 1].number if len(found) > limit else None


def everything(services: Services, sort: Sort, slug: str) -> Iterator[Answer]:
    """Give the jottings of a sort about a recipe, the first MOST_READ of them; none where there is no recipe."""
    after: int | None = 0
    for _ in range(MOST_READ // AT_ONCE):
        if after is None:
            return
        items, after = page(services, Which(sort, slug), after, AT_ONCE)
        yield from items


def told_of(services: Services, jotting: Jotting) -> Answer:
    """Return a jotting as JSON values."""
    return _told(jotting, services.store.names())


def _told(jotting: Jotting, names: Mapping[str, str]) -> Answer:
    said: Answer = json.loads(jotting.body, parse_float=Decimal)
    return {
        "number": jotting.number,
        "sort": jotting.sort,
        "recipe": jotting.recipe,
        **said,
        "whose": names.get(jotting.whose),
        "whose_key": jotting.whose,
        "by": standing.person_json(jotting.by, names),
        "at": jotting.at,
        "changed": jotting.changed,
        "sha256": jotting.sha256,
        "etag": f'"{jotting.sha256}"',
        "href": f"/v1/recipes/{jotting.recipe}/{PATHS[jotting.sort]}/{jotting.number}",
    }


def _body(services: Services, which: Which, content: Content) -> tuple[bytes, str]:
    """Return what is kept of a content, its places looked up in the plan, with the revision that it is about."""
    based = based_of(services, which.recipe, content)
    said = {name: value for name, value in content.items() if name != "whose" and value is not None}
    said["revision"] = based.recipe.sha256
    _refuse_tiny(said, "")
    if which.sort == "answer":
        said |= _placed(plan_of(services, based)[0], content, "")
        _refuse_unfit(services, which.recipe, content)
    elif content.get("queries"):
        plan, _ = plan_of(services, based)
        said["queries"] = [
            {**each, **_placed(plan, each, f"/queries/{place}")} for place, each in enumerate(content["queries"])
        ]
    return json_bytes(dict(sorted(said.items()))), based.recipe.sha256


def _whose(content: Content) -> str:
    return str(content.get("whose") or "").strip()


def _refuse_tiny(value: Any, pointer: str) -> None:
    """Refuse a figure above 0 that nobody can have measured, before it divides another one."""
    if isinstance(value, Mapping):
        for name, each in value.items():
            _refuse_tiny(each, f"{pointer}/{name}")
    elif isinstance(value, list):
        for place, each in enumerate(value):
            _refuse_tiny(each, f"{pointer}/{place}")
    elif isinstance(value, Decimal) and 0 < value < LEAST:
        raise BadInput(pointer, f"Nobody measures less than {LEAST}.", f"Give at least {LEAST}, or leave it out.")


def _refuse_unfit(services: Services, slug: str, content: Content) -> None:
    """Refuse an answer that names the edition which puts a pattern right and does not say that it was wrong."""
    if content.get("erratum") is None:
        return
    if not content.get("wrong"):
        raise BadInput("/erratum", "The pattern was not wrong by this answer.", "Say wrong: true, or leave it out.")
    editions.find(services, slug, content["erratum"])


def based_of(services: Services, slug: str, content: Content) -> Based:
    """Return what a content is about; raise NotFound, and BadInput where edition, revision and size do not agree."""
    number, size, revision = (content.get(name) for name in ("edition", "size", "revision"))
    if number is None:
        if size:
            raise BadInput("/size", "A size by its name is one of an edition.", "Name the edition too.")
        store = services.store
        return Based(store.revision("recipe", slug, revision) if revision else store.latest("recipe", slug))
    whole = editions.content_of(services, editions.find(services, slug, number))
    if revision and revision != whole["revision"]:
        message = f"Edition {number} is of the revision {whole['revision']}."
        raise BadInput("/revision", message, "Leave the revision out: it follows from the edition.")
    sizes = [each["size"] for each in whole["patterns"] if each["terms"] == "us"]
    if (size or "") not in sizes:
        names = ", ".join(each for each in sizes if each) or "one size, which has no name"
        raise BadInput("/size", f"Edition {number} has no size {size!r}.", f"It has: {names}.")
    return Based(services.store.revision("recipe", slug, whole["revision"]), whole, size or "")


def plan_of(services: Services, based: Based) -> tuple[Plan, Answer]:
    """Return the plan that was knitted from, and its request; raise what planning raises."""
    request = request_of(based.recipe)
    if based.edition is None or not based.size:
        return planning.made(services, request), request
    made = editions.in_sizes(services, editions.titled(based.recipe), based.edition, "us")
    return next(each.plan for each in made if each.size == based.size), request


def _placed(plan: Plan, place: Content, pointer: str) -> Answer:
    """Return the part and the row in it; a row without a part is one of the whole blanket. Raise BadInput."""
    row, name = place["row"], place.get("section")
    named = [each for each in plan.sections if name is None and 0 <= row - each.first_row < each.rows]
    if named:
        return {"section": named[0].name, "row": row - named[0].first_row + 1}
    for each in plan.every_section:
        if name is not None and each.name.casefold() == name.casefold() and row <= each.rows:
            return {"section": each.name, "row": row}
    there = ", ".join(f"{each.name} with {each.rows} rows" for each in plan.every_section)
    where = "" if name is None else f" in {name!r}"
    raise BadInput(f"{pointer}/row", f"The pattern has no row {row}{where}.", there + ".")
