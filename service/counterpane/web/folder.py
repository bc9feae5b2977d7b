"""A whole library as the files of a folder that any web server can serve: pages, pictures, data and a feed.

Every link is relative and names a file, so that the folder works from any address and from a disk. No page runs a
script but that of a pattern, which works without it. The same library gives the same bytes.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import dataclass, replace
from hashlib import sha256
from importlib.resources import files
from itertools import groupby
from typing import Any

import orjson
from jinja2 import Environment, PackageLoader, select_autoescape

from counterpane.craft.constructions import CannotBePlanned
from counterpane.craft.drawing import Picture
from counterpane.library.errors import LibraryError
from counterpane.library.keeping.objects import json_bytes
from counterpane.library.keeping.pinning import pins_in, request_of
from counterpane.library.parts import components
from counterpane.library.patterns import pages
from counterpane.library.patterns.cautions import CAUTIONS
from counterpane.library.ports import Kept
from counterpane.library.services import Services
from counterpane.library.sharing import feed
from counterpane.library.sharing.exports import table_of
from counterpane.library.sharing.part_pages import EACH_WORDING, SIDES, UNKNOWN, part_page, standing
from counterpane.library.sharing.part_pictures import SAID, pictures_of
from counterpane.library.sharing.published import (
    Published,
    body_bytes,
    card_of,
    latest_changes,
    objects_of,
    refuse_moved,
)
from counterpane.library.values import BadInput
from counterpane.web import RulePages, as_text, marked

POLICY = "default-src 'none'; img-src 'self'; style-src 'self'; base-uri 'none'; form-action 'none'"
LIST = "published.json"
"""The list of all other files with their hashes, by which a folder is known again."""
FORM = "counterpane pages 1"
HEADINGS = {
    "body": "Textures for the body",
    "border": "Borders",
    "selvedge": "Selvedges",
    "cast-on": "Cast-ons",
    "bind-off": "Bind-offs",
}
File = tuple[str, bytes]


@dataclass(frozen=True, slots=True)
class Folder:
    """What the files of a folder are made of."""

    services: Services
    shown: Published
    rules: RulePages
    title: str
    looks: Environment


def files_of(services: Services, shown: Published, rules: RulePages, title: str) -> Iterator[File]:
    """Give every file of a folder by its name, the list of all of them last; raise Stale for what was taken back."""
    services = replace(services, now=lambda: _as_of(services))
    folder = Folder(services, shown, rules, title, _looks())
    sums: dict[str, str] = {}
    for name, content in _files(folder):
        sums[name] = sha256(content).hexdigest()
        yield name, content
    refuse_moved(services, shown)
    yield LIST, json_bytes({"form": FORM, "files": dict(sorted(sums.items()))}) + b"\n"


def _as_of(services: Services) -> str:
    """Return when the library was last written, which is the only time that a folder knows."""
    last = services.store.last_change()
    return services.store.changes(last - 1, 1)[0].at if last else feed.NEVER


def _looks() -> Environment:
    looks = Environment(
        loader=PackageLoader("counterpane.web"), autoescape=select_autoescape(), trim_blocks=True, lstrip_blocks=True
    )
    looks.filters |= {"marked": marked, "text": as_text}
    return looks


def _files(folder: Folder) -> Iterator[File]:
    shown = folder.shown
    yield "pages.css", files("counterpane.web").joinpath("static/pages.css").read_bytes()
    yield "index.html", _index(folder)
    for kept in shown.parts.values():
        yield from _part(folder, kept)
    for kept in shown.recipes.values():
        yield from _recipe(folder, kept)
    for name, content in objects_of(folder.services, shown):
        yield f"objects/sha256/{name}.json", content
    yield from _rules(folder)
    yield from _lists(folder)
    yield "feed.atom", feed.folder_feed(folder.services, latest_changes(folder.services, shown), folder.title)


def _page(folder: Folder, template: str, root: str, **told: Any) -> bytes:
    """Return a page; `root` leads from where it lies to the folder itself."""

    def to(path: str) -> str:
        page, mark, place = path.partition("#")
        known = {"/": "index.html", "/rules": "rules/index.html", "/static/pages.css": "pages.css"}
        return f"{root}{known.get(page) or f'{page[1:]}.html'}{mark}{place}"

    common = {"to": to, "root": root, "home": folder.title, "policy": POLICY, "kinds": HEADINGS, "terms": EACH_WORDING}
    return (folder.looks.get_template(template).render(**common, **told) + "\n").encode()


def _index(folder: Folder) -> bytes:
    cards = [card_of("component", kept) for kept in folder.shown.parts.values()]
    by_kind = {kind: [card for card in cards if card["kind"] == kind] for kind in HEADINGS}
    told = {
        "by_kind": by_kind,
        "recipes": [card_of("recipe", kept) for kept in folder.shown.recipes.values()],
        "sides": lambda card: SIDES.get(card["reversible"] or "", UNKNOWN),
        "counts": _counts,
        "left_out": folder.shown.left_out,
        "as_of": folder.services.now(),
        "number": folder.services.store.last_change(),
        "cautions": CAUTIONS,
    }
    return _page(folder, "folder/index.html", "", **told)


def _counts(card: Mapping[str, Any]) -> str:
    if card["fixed"] is not None:
        return f"{card['fixed']} alone"
    classes = card["classes"] or ([card["multiple"]] if card["multiple"] else [])
    return "; ".join(_progression(each) for each in classes) or "any"


def _progression(each: Mapping[str, int]) -> str:
    plus = f" plus {each['plus']}" if each["plus"] else ""
    return f"any from {each['least']}" if each["of"] == 1 else f"multiple of {each['of']}{plus}, from {each['least']}"


def _part(folder: Folder, kept: Kept) -> Iterator[File]:
    component = components.find(folder.services, kept.slug, kept.sha256)
    drawn = [(_picture_name(kept.slug, each), each) for each in pictures_of(folder.services, component)]
    told = part_page(folder.services, folder.shown, kept)
    told |= {"drawn": drawn, "drawn_how": SAID, "published": folder.shown}
    yield f"components/{kept.slug}.html", _page(folder, "folder/part.html", "../", **told)
    yield f"components/{kept.slug}.json", body_bytes(folder.shown, "component", kept)
    for name, picture in drawn:
        yield f"components/{name}", picture.svg.encode()


def _picture_name(slug: str, picture: Picture) -> str:
    return f"{slug}.{picture.kind}.svg"


def _recipe(folder: Folder, kept: Kept) -> Iterator[File]:
    written, why = _patterns(folder, kept)
    told = {
        "recipe": orjson.loads(kept.body),
        "parts": list(pins_in(kept)),
        "names": {slug: orjson.loads(part.body)["name"] for slug, part in folder.shown.parts.items()},
        "written": sorted(written),
        "why": why,
        "published": folder.shown,
        **standing(folder.services, folder.shown, "recipe", kept),
    }
    yield f"recipes/{kept.slug}.html", _page(folder, "folder/recipe.html", "../", **told)
    yield f"recipes/{kept.slug}.json", kept.body
    yield from ((f"recipes/{name}", content) for name, content in written.items())


def _patterns(folder: Folder, kept: Kept) -> tuple[dict[str, bytes], str | None]:
    """Return the pattern in each of the terms by the name of its file, or none and why none can be written."""
    content = {**request_of(kept), "title": orjson.loads(kept.body)["name"]}
    try:
        return {
            f"{kept.slug}.{terms}.html": pages.page(folder.services, {**content, "terms": terms}, "html")
            for _, terms in EACH_WORDING
        }, None
    except (CannotBePlanned, BadInput, LibraryError) as reason:
        return {}, str(reason)


def _rules(folder: Folder) -> Iterator[File]:
    cards = folder.rules.cards
    families = [(name, tuple(found)) for name, found in groupby(cards, lambda card: str(card["family"]))]
    yield "rules/index.html", _page(folder, "rules.html", "../", families=families)
    for card in cards:
        page = _page(folder, "rule.html", "../", rule=folder.rules.page(card["slug"]))
        yield f"rules/{card['slug']}.html", page


def _lists(folder: Folder) -> Iterator[File]:
    for shelf, kept_by_slug in folder.shown.shelves:
        cards = [card_of(shelf, kept) for kept in kept_by_slug.values()]
        yield f"{shelf}s.ndjson", b"".join(json_bytes(card) + b"\n" for card in cards)
        yield f"{shelf}s.csv", table_of(cards, raw=False)
