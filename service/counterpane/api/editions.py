"""Editions of recipes over HTTP, their errata, and what a corrected component touches."""

from __future__ import annotations

from counterpane.api import examples, jotting_examples, kept
from counterpane.api.feed import ATOM
from counterpane.api.operations import JSON, Answer, Call, operation
from counterpane.api.paging import page, read_query, write_cursor
from counterpane.api.patterns import FORMS, MEDIA
from counterpane.api.sending import as_json
from counterpane.library.editions import corrections, edition_files, editions, errata, touched
from counterpane.library.keeping.objects import json_bytes
from counterpane.library.patterns.pages import PAGES
from counterpane.library.sharing.feed import corrections_feed
from counterpane_schema.corrections import CorrectionsAnswer, CorrectionsQuery
from counterpane_schema.edition import (
    EditionAnswer,
    EditionContent,
    EditionList,
    EditionQuery,
    EditionWritten,
    ErratumAnswer,
    ErratumQuery,
    TouchedPage,
    TouchedQuery,
)

ALL = "/v1/recipes/<slug>/editions"
ONE = f"{ALL}/<number>"
CORRECTIONS_IN = {JSON: "json", "text/plain": "text", ATOM: "atom"}
LOOKED_OVER = 10
"""Recipes that are looked over at a time, each planned twice where it is touched; house."""


@operation(
    "POST",
    ALL,
    tag="recipes",
    answer=EditionAnswer,
    status=201,
    body=EditionContent,
    role="contributor",
    tagged=True,
    once=True,
    problems=("not-theirs", "taken", "cannot-be-kept", "cannot-be-planned", "licence-refuses", "not-usable"),
    examples=examples.EDITION_PUBLISHED,
)
def publish_edition(call: Call) -> Answer:
    """Publish the next edition of a recipe.

    It is numbered from 1 and never changes: its pattern is kept in US and UK terms as it reads that day, with the
    hashes of all that it pins and of the pattern's data. From the second on it brings the erratum of the one before,
    which is worked out from both. One that says the same as the one before is refused. Whoever added the recipe
    publishes it, or a reviewer.
    """
    made, before = editions.publish_once(call.services, call.path["slug"], call.body, call.writer, call.once)
    return kept.published(made, before, f"/v1/recipes/{made.slug}/editions/{made.number}")


@operation("GET", ALL, tag="recipes", answer=EditionList, role="reader", examples=examples.EDITIONS)
def list_editions(call: Call) -> Answer:
    """List the editions of a recipe, the first one first."""
    cards = editions.cards(call.services, call.path["slug"])
    return as_json({"recipe": call.path["slug"], "items": cards})


@operation("GET", ONE, tag="recipes", answer=EditionAnswer, role="reader", tagged=True, examples=examples.EDITION)
def get_edition(call: Call) -> Answer:
    """Get an edition with what it pins, the hashes of its pattern, and its erratum."""
    return kept.shown(editions.find(call.services, call.path["slug"], _number(call)))


@operation(
    "GET",
    f"{ONE}/pattern",
    tag="recipes",
    answer=EditionWritten,
    media=tuple(FORMS),
    query=EditionQuery,
    role="reader",
    problems=("written-otherwise",),
    examples=examples.EDITION_PATTERN,
)
def get_edition_pattern(call: Call) -> Answer:
    """Get the pattern of an edition, with its number and date on every page.

    Plain text is kept as it was printed. The other forms are laid out when they are asked for, and only where the
    pattern's data still has the hash that was published.
    """
    form = call.query.get("as", FORMS[call.media])
    asked = edition_files.Asked(call.path["slug"], _number(call), call.query.get("terms", "us"), call.query.get("size"))
    made = edition_files.written(call.services, asked, form, call.query.get("paper", "a4"))
    if form == "json":
        return Answer(made)
    name = f'attachment; filename="edition-{asked.number}.{form}"'
    media = MEDIA[form] if form in PAGES else f"{MEDIA[form]}; charset=utf-8"
    return Answer(made, media=media, headers=(("Content-Disposition", name),) if form in PAGES else ())


@operation(
    "GET",
    f"{ONE}/erratum",
    tag="recipes",
    answer=ErratumAnswer,
    media=(JSON, "text/plain"),
    query=ErratumQuery,
    role="reader",
    examples=examples.ERRATUM,
)
def get_erratum(call: Call) -> Answer:
    """Get the erratum that leads to an edition from the one before, or from the one in hand.

    Each changed line stands in it once: its place, both texts, the sizes hit, and what to do for who is past that row.
    Changes of what is read for safety come first.
    """
    asked = call.query.get("since"), call.query.get("terms", "us")
    found = editions.erratum(call.services, call.path["slug"], _number(call), *asked)
    if call.media == JSON:
        return as_json(found)
    return Answer(errata.words_of(found).encode(), media="text/plain; charset=utf-8")


@operation(
    "GET",
    f"{ONE}/corrections",
    tag="recipes",
    answer=CorrectionsAnswer,
    media=(JSON, "text/plain", ATOM),
    query=CorrectionsQuery,
    role="reader",
    examples=jotting_examples.CORRECTIONS,
)
def get_corrections(call: Call) -> Answer:
    """Get what was corrected or held back since an edition, safety first; for whoever took a copy of it.

    Later editions with the erratum that leads to the latest; what was done with the revisions of the recipe and its
    parts; safety reports that were upheld; answers that say the pattern was wrong. As Atom (RFC 4287) a feed reader can
    follow it. Each form of the pattern of an edition prints this address.
    """
    slug, terms = call.path["slug"], call.query.get("terms", "us")
    found = corrections.since(call.services, slug, _number(call), terms)
    form = call.query.get("as", CORRECTIONS_IN[call.media])
    if form == "atom":
        return Answer(corrections_feed(call.services, found), media=ATOM)
    if form == "text":
        return Answer(corrections.words_of(found).encode(), media="text/plain; charset=utf-8")
    return as_json(found)


@operation(
    "GET",
    "/v1/components/<slug>/touched",
    tag="components",
    answer=TouchedPage,
    query=TouchedQuery,
    role="reader",
    problems=("cursor-not-valid",),
    examples=examples.TOUCHED,
)
def list_touched(call: Call) -> Answer:
    """List the recipes and editions that pin an older revision of a component, each with a drafted erratum.

    Each is planned again with the latest revision. `fits` is false where no blanket comes of it, and `findings` say
    why. A draft is kept nowhere: revise the recipe and publish its next edition. A page holds what is touched among so
    many recipes as `limit` says, and may be empty while `next` leads on.
    """
    query = {"limit": LOOKED_OVER} | dict(call.query) if not call.query.get("cursor") else call.query
    filters, after, limit = read_query(call.services, query)
    slug = call.path["slug"]
    found = touched.page(call.services, slug, filters.get("terms", "us"), after, limit)
    cursor = write_cursor(call.services, filters | {"limit": limit}, found.last) if found.last is not None else None
    start = {"component": slug, "latest": found.latest}
    return page(f"/v1/components/{slug}/touched", [json_bytes(each) for each in found.items], cursor, start)


def _number(call: Call) -> int:
    return call.number("an edition", "Editions are numbered from 1.")
