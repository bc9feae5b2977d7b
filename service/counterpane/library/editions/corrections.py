"""What was put right or held back since an edition, safety first: for whoever took a copy of it and comes to ask.

Told are later editions with the erratum that leads to the latest, what was done with the revision of the recipe and
of its parts, safety reports that were upheld, and answers that say the pattern was wrong and are not put right yet.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from typing import Any

import orjson

from counterpane.craft.stitches import Terms
from counterpane.library.editions import editions, errata
from counterpane.library.knitting import noting
from counterpane.library.ports import Kept, Shelf
from counterpane.library.review.matters import Matter, Sought
from counterpane.library.services import Services

Content = Mapping[str, Any]
Answer = dict[str, Any]

HELD_BACK = ("deprecated", "yanked", "quarantined", "withdrawn")
"""States of a revision that whoever works from it should hear of."""
ABOUT = (
    "This is what this library knows of. That it knows of no correction is no proof that nothing is wrong, and another "
    "library may know more."
)
MOST_MATTERS = 200
"""House: the most reports about one thing that are looked over."""
SHOWN = 16
"""House: digits of a hash that are printed; enough to tell editions apart."""


def since(services: Services, slug: str, number: int, terms: Terms = "us") -> Answer:
    """Return what was corrected since an edition, safety first and else the latest first; raise NotFound."""
    kept = editions.find(services, slug, number)
    whole, chain = orjson.loads(kept.body), editions.history(services, slug)
    erratum = editions.erratum(services, slug, len(chain), number, terms) if len(chain) > number else None
    found = [*_editions(chain[number:]), *_standing(services, whole), *_reports(services, whole)]
    found += _answers(services, slug, number)
    found.sort(key=lambda each: str(each["at"]), reverse=True)
    found.sort(key=lambda each: not each["safety"])
    return {
        "recipe": slug,
        "edition": number,
        "date": whole["date"],
        "sha256": kept.sha256,
        "latest": len(chain),
        "corrected": bool(found),
        "safety": any(each["safety"] for each in found) or bool(erratum and erratum["safety"]),
        "about": ABOUT,
        "items": found,
        "erratum": erratum,
    }


def _item(sort: str, at: str, said: str, href: str, *, safety: bool) -> Answer:
    return {"sort": sort, "safety": safety, "at": at, "said": said, "href": href}


def _editions(later: Sequence[Kept]) -> Iterator[Answer]:
    for kept in later:
        whole = orjson.loads(kept.body)
        safety = whole["reason"] == errata.SAFETY or any(each["safety"] for each in whole["erratum"].values())
        note = f" {whole['note']}" if whole["note"] else ""
        said = f"Edition {whole['number']}, {whole['date']}: a correction{' for safety' if safety else ''}.{note}"
        yield _item("edition", kept.at, said, f"{whole['href']}/erratum", safety=safety)


def _standing(services: Services, whole: Content) -> Iterator[Answer]:
    """Give the last move of the recipe's revision and of each part's, where it holds them back."""
    things: list[tuple[Shelf, str, str]] = [("recipe", whole["recipe"], whole["revision"])]
    things += [("component", slug, sha256) for slug, sha256 in whole["pins"].items()]
    for shelf, slug, sha256 in things:
        last = services.store.standing(shelf, slug, sha256)
        if last is not None and last.status in HELD_BACK:
            named = "The recipe" if shelf == "recipe" else f"Its part {slug}"
            said = f"{named} is {last.status}: {last.said}"
            href = f"/v1/{shelf}s/{slug}/standing"
            yield _item("standing", last.at, said, href, safety=last.status != "deprecated")


def _reports(services: Services, whole: Content) -> Iterator[Answer]:
    """Give the safety reports about the recipe and its parts that were upheld."""
    for slug in (whole["recipe"], *whole["pins"]):
        for matter in services.store.queue(Sought("safety", "nobody", slug, limit=MOST_MATTERS)).matters:
            if _concerns(matter, whole):
                yield from _upheld(services, matter, whole)


def _concerns(matter: Matter, whole: Content) -> bool:
    """Say whether a report is about the recipe, or about a part at whichever revision: an older one may share it."""
    return matter.slug == whole["recipe"] if matter.shelf == "recipe" else matter.slug in whole["pins"]


def _upheld(services: Services, matter: Matter, whole: Content) -> Iterator[Answer]:
    """Give the decision that upheld a report: about a revision of this edition, or made since it was published."""
    of_it = matter.sha256 in (whole["revision"], *whole["pins"].values())
    for each in services.store.decisions(matter.number):
        if each.decision == "uphold" and (of_it or each.at >= whole["published"]):
            said = f"A safety report about the {matter.shelf} {matter.slug} was upheld: {each.said}"
            yield _item("report", each.at, said, f"/v1/submissions/{matter.number}", safety=True)


def _answers(services: Services, slug: str, number: int) -> Iterator[Answer]:
    """Give the answers by which the pattern was wrong, unless this edition or one before it put that right."""
    for each in noting.everything(services, "answer", slug):
        if each.get("wrong") and (each.get("erratum") is None or each["erratum"] > number):
            right = f" Edition {each['erratum']} puts it right." if each.get("erratum") else ""
            said = f"{each['section']}, row {each['row']}: {each['answer']}{right}"
            yield _item("answer", each["changed"], said, each["href"], safety=False)


def words_of(found: Content) -> str:
    """Return what was corrected as plain text."""
    return "\n".join(_words(found)) + "\n"


def _words(found: Content) -> Iterator[str]:
    yield f"{found['recipe']}, edition {found['edition']} of {found['date']}; the latest is edition {found['latest']}."
    if found["safety"]:
        yield "It was corrected for safety: read all of this before you knit on or use the piece."
    if not found["corrected"]:
        yield "This library knows of no correction."
    yield from (f"{'Safety: ' if each['safety'] else ''}{each['said']} ({each['href']})" for each in found["items"])
    yield found["about"]
    if found["erratum"]:
        yield ""
        yield f"From edition {found['edition']} to edition {found['latest']}:"
        yield errata.words_of(found["erratum"]).rstrip("\n")


def question_of(services: Services, slug: str, number: int, sha256: str) -> str:
    """Return the line of a written pattern that says where to ask whether it was corrected."""
    place = f"/v1/recipes/{slug}/editions/{number}/corrections"
    asked = f"{services.address}{place}" if services.address else f"the library that it is from for {place}"
    return (
        f"Was edition {number} of {slug} corrected? Ask {asked} or say: counterpane edition corrections {slug} "
        f"{number}. Its SHA-256 begins with {sha256[:SHOWN]}."
    )
