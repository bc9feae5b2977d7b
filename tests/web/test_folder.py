"""A whole library as a folder of pages: every link leads somewhere, and nothing that was taken back is in it."""

from __future__ import annotations

import csv
import io
import json
import posixpath
import re
from collections.abc import Mapping
from dataclasses import replace
from hashlib import sha256
from html import unescape
from typing import Any
from urllib.parse import urlsplit
from xml.etree import ElementTree

import orjson
import pytest

from counterpane import wiring
from counterpane.craft.component import content_of
from counterpane.library.errors import Stale
from counterpane.library.keeping import recipes
from counterpane.library.parts import components
from counterpane.library.ports import Holder
from counterpane.library.review import standing
from counterpane.library.services import Services
from counterpane.library.sharing.published import published
from counterpane.seeding import load_component
from counterpane.web import RulePages
from counterpane.web.folder import LIST, files_of

NO_RULES = RulePages((), lambda slug: {})
KEEPER = Holder("0" * 64, "keeper", "Bram", "2026-01-02T03:04:05Z")
LINK = re.compile(r'(?:href|src)="([^"]*)"')
RECIPE: dict[str, Any] = {
    "slug": "dusk",
    "name": "Dusk",
    "parts": {"body": "pea-ridge"},
    "gauge": {"stitches": 22, "rows": 30, "over_cm": 10, "in": "pea-ridge"},
    "size": {"width_cm": 70, "length_cm": 90},
}


def library(starters: bool) -> Services:
    """Return a library in memory whose clock stands still."""
    made = wiring.open_library(starters=starters)
    return replace(made, now=lambda: "2026-11-27T00:00:00Z")


def standing_of(page: bytes) -> str:
    """Return what a page says of where it stands, as text without its marks."""
    text = page.decode().partition('<h2 id="standing">')[2].partition("</table>")[0]
    return " ".join(unescape(re.sub(r"<[^>]*>", " ", text)).split()).replace(" .", ".")


@pytest.fixture(scope="module")
def whole() -> Mapping[str, bytes]:
    """Return every file of the library of the starters."""
    services = library(starters=True)
    return dict(files_of(services, published(services), wiring.rule_pages(services), "Ninepenny Loft"))


@pytest.fixture
def small() -> Services:
    """Return a library of the parts of one recipe, and of the recipe."""
    services = library(starters=False)
    for slug in ("long-tail", "garter-border", "plain-bind-off", "waffle"):
        components.add(services, content_of(load_component(slug)), "Bram", "accepted")
    components.add(services, ridge("Pea ridge"), "Bram", "accepted")
    recipes.RECIPES.add(services, RECIPE, "Bram", "accepted")
    return services


def ridge(name: str) -> dict[str, Any]:
    """Return a texture of its own: the waffle under another name."""
    return content_of(load_component("waffle")) | {"slug": "pea-ridge", "name": name}


def moved(services: Services, to: str, because: str, **more: str) -> None:
    """Move the latest revision of the texture."""
    content = {"to": to, "because": because, "say": "Row 3 is misprinted.", **more}
    standing.move(services, "component", "pea-ridge", content, KEEPER)


def folder(services: Services, *only: str) -> dict[str, bytes]:
    """Return the files of a library, without the pages of the rules."""
    return dict(files_of(services, published(services, only), NO_RULES, "Ninepenny Loft"))


def pages(files: Mapping[str, bytes]) -> dict[str, str]:
    """Return the pages among files."""
    return {name: content.decode() for name, content in files.items() if name.endswith(".html")}


def test_every_link_leads_to_a_file_and_every_place_in_it_is_there(whole: Mapping[str, bytes]) -> None:
    """Relative ones alone, but for those to the texts of licences."""
    found = 0
    for name, text in pages(whole).items():
        for link in map(unescape, LINK.findall(text)):
            address = urlsplit(link)
            if address.scheme == "data" or address.netloc == "creativecommons.org":
                continue
            assert not address.scheme and not address.path.startswith("/"), link
            there = posixpath.normpath(posixpath.join(posixpath.dirname(name), address.path)) if address.path else name
            assert there in whole, f"{name}: {link}"
            assert not address.fragment or f'id="{address.fragment}"' in whole[there].decode(), f"{name}: {link}"
            found += 1
    assert found > 1000


def test_no_file_is_without_a_way_to_it(whole: Mapping[str, bytes]) -> None:
    """From the index every file is reached, the list of them among the links."""
    seen, waiting = set(), ["index.html", "feed.atom"]
    while waiting:
        name = waiting.pop()
        if name not in seen:
            seen.add(name)
            links = LINK.findall(whole[name].decode()) if name.endswith((".html", ".atom")) else []
            paths = (urlsplit(unescape(link)).path for link in links if not urlsplit(link).scheme)
            waiting += [posixpath.normpath(posixpath.join(posixpath.dirname(name), path)) for path in paths if path]
    assert seen == whole.keys()


def test_the_same_library_gives_the_same_bytes_whenever_it_is_asked(small: Services) -> None:
    """The clock is not in them."""
    assert folder(small) == folder(replace(small, now=lambda: "2031-01-01T00:00:00Z"))


def test_the_pages_run_no_script_and_their_policy_allows_none(whole: Mapping[str, bytes]) -> None:
    """But for the ticks of a pattern, which its policy names by their hash."""
    for name, text in pages(whole).items():
        policy = re.search(r'Content-Security-Policy" content="([^"]*)"', text)
        assert policy and unescape(policy[1]).startswith("default-src 'none';")
        is_pattern = name.startswith("recipes/") and name.count(".") > 1
        assert is_pattern or not re.search(r"<script|<style|\sstyle=|\son\w+=", text)


def test_a_page_of_a_part_says_rows_counts_safety_licence_and_revision(whole: Mapping[str, bytes]) -> None:
    """In US and UK words; what is not known of safety says so."""
    text = unescape(whole["components/shield-lace.html"].decode())
    kept = json.loads(whole["components/shield-lace.json"])
    for said in ("K4, *k2tog, k3, yo,", "K4, *k2tog, k3, yfwd,", "a multiple of 15 stitches plus 8", "IX. Shield"):
        assert said in text
    assert "<dt>Fibre<dd>not known" in text and "CC0-1.0" in text
    assert f"objects/sha256/{kept['sha256']}.json" in text
    assert {f"components/shield-lace.{view}.svg" for view in ("chart", "fabric")} <= whole.keys()


def test_an_object_has_the_hash_of_its_name(whole: Mapping[str, bytes]) -> None:
    """And the list holds the hash of every file but itself."""
    objects = {name: content for name, content in whole.items() if name.startswith("objects/")}
    assert objects and all(sha256(content).hexdigest() in name for name, content in objects.items())
    listed = json.loads(whole[LIST])["files"]
    assert listed == {name: sha256(content).hexdigest() for name, content in whole.items() if name != LIST}


def test_the_lists_and_the_feed_tell_of_the_same_and_lead_to_it(whole: Mapping[str, bytes]) -> None:
    """A line each, by a relative address."""
    lines = [orjson.loads(line) for line in whole["components.ndjson"].splitlines()]
    rows = list(csv.DictReader(io.StringIO(whole["components.csv"].decode())))
    assert [line["href"] for line in lines] == [row["href"] for row in rows]
    assert {line["href"] for line in lines} <= whole.keys()
    links = ElementTree.fromstring(whole["feed.atom"]).iterfind("{*}entry/{*}link")
    assert {link.get("href") for link in links} <= whole.keys()


@pytest.mark.parametrize(
    ("to", "because", "more"),
    [("quarantined", "hazard", {"until": "2027-01-01", "owner": "Suri"}), ("withdrawn", "licence-forbids", {})],
)
def test_nothing_of_what_was_taken_back_is_left(small: Services, to: str, because: str, more: dict[str, str]) -> None:
    """Neither the part nor the recipe that rests on it, in no file; the index says how many are left out."""
    assert any(b"pea-ridge" in content for content in folder(small).values())
    moved(small, to, because, **more)
    files = folder(small)
    for word in (b"pea-ridge", b"Pea ridge", b"dusk", b"Dusk", b"misprinted"):
        assert [name for name, content in files.items() if word in content] == []
    assert "components/waffle.html" in files and b"may not be shown" in files["index.html"]


def test_of_an_earlier_revision_that_was_withdrawn_no_word_is_left(small: Services) -> None:
    """The table of revisions says that there was one, and neither its hash nor its words."""
    first = components.latest(small, "pea-ridge").sha256
    components.COMPONENTS.revise(small, "pea-ridge", ridge("Bean ridge"), None, "Bram")
    moved(small, "withdrawn", "licence-forbids", revision=first)
    files = folder(small)
    for word in (b"Pea ridge", first.encode(), b"dusk"):
        assert [name for name, content in files.items() if word in content] == []
    assert "<td>withdrawn<td>not shown" in files["components/pea-ridge.html"].decode()


def test_only_what_stands_as_asked_is_shown_the_latest_of_each(small: Services) -> None:
    """A next revision is a draft: the accepted one before it is shown in its place."""
    first = components.latest(small, "pea-ridge").sha256
    components.COMPONENTS.revise(small, "pea-ridge", ridge("Bean ridge"), None, "Bram")
    files = folder(small, "accepted")
    assert json.loads(files["components/pea-ridge.json"])["sha256"] == first
    assert not [name for name, content in files.items() if b"Bean ridge" in content]
    assert b"Bean ridge" in folder(small)["components/pea-ridge.html"]


@pytest.mark.parametrize(
    ("status", "said"),
    [
        ("draft", "Draft. A draft that nobody has reviewed."),
        ("in-review", "In-review. Handed in, and not yet decided."),
        ("accepted", "Accepted. Looked at and taken in."),
        ("mirrored", "Mirrored. Taken over from another library, and not reviewed in this one."),
    ],
)
def test_a_page_says_where_its_part_stands(small: Services, status: str, said: str) -> None:
    """In a sentence, and of each revision in a table."""
    components.add(small, ridge("Bean ridge") | {"slug": "bean-ridge"}, "Bram", status)
    told = standing_of(folder(small)["components/bean-ridge.html"])
    assert f"Where it stands {said} Revisions" in told
    assert re.search(rf"1, this page \S+ {status} [0-9a-f]{{64}}$", told)


@pytest.mark.parametrize(
    ("to", "because", "more", "said"),
    [
        (
            "yanked",
            "misprint",
            {},
            "Yanked. Not to be used in anything else: read why. “Row 3 is misprinted.” Revisions",
        ),
        (
            "deprecated",
            "replaced",
            {"replacement": "waffle"},
            "Deprecated. Still here, and something else is better. “Row 3 is misprinted.” "
            "Use instead: waffle. Revisions",
        ),
    ],
)
def test_a_page_says_why_its_part_was_moved_and_what_to_use_instead(
    small: Services, to: str, because: str, more: dict[str, str], said: str
) -> None:
    """In the words of who moved it, with a link to the other one."""
    moved(small, to, because, **more)
    page = folder(small)["components/pea-ridge.html"]
    assert said in standing_of(page)
    assert ('Use instead: <a href="waffle.html">waffle</a>' in page.decode()) == ("replacement" in more)


def test_a_page_of_a_recipe_says_where_it_stands_and_how_each_revision_does(small: Services) -> None:
    """The page is that of the latest one."""
    recipes.RECIPES.revise(small, "dusk", RECIPE | {"name": "Early dusk"}, None, "Bram")
    told = standing_of(folder(small)["recipes/dusk.html"])
    assert "Where it stands Draft. A draft that nobody has reviewed. Revisions" in told
    assert re.search(r" 1 \S+ accepted [0-9a-f]{64} 2, this page \S+ draft [0-9a-f]{64}$", told)


def test_what_is_taken_back_while_the_folder_is_written_is_refused(small: Services) -> None:
    """No list of the files is given, without which no folder takes its place."""
    files = files_of(small, published(small), NO_RULES, "Ninepenny Loft")
    next(files)
    moved(small, "quarantined", "hazard", until="2027-01-01", owner="Suri")
    with pytest.raises(Stale, match="taken back meanwhile"):
        list(files)


def test_an_empty_library_has_an_index_and_lists_of_nothing() -> None:
    """They say so, and nothing fails."""
    files = folder(library(starters=False))
    assert files["components.ndjson"] == b"" and b"As of change 0" in files["index.html"]
