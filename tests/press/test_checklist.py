"""What designers' checklists agree that a pattern holds, in every form: thirteen elements of every recipe that ships.

The list: four checklists of designers that agree (arohaknits.com; donnajonesdesigns.co.uk, 2016; manycreativegifts,
2020; kimwerker.com, 2015), second-hand. The levels: Craft Yarn Council, project levels of 2018, second-hand.
"""

from __future__ import annotations

import io
import re
from collections.abc import Callable, Mapping
from html import unescape
from typing import Any

import pytest
from pypdf import PdfReader

from counterpane.craft.pattern.level import LEVELS
from counterpane.library.patterns import pages
from counterpane.library.services import Services
from counterpane.library.texts.checks import check_text
from counterpane.seeding.recipes import load_recipes
from counterpane.wiring import open_library

RECIPES = {recipe["slug"]: recipe for recipe in load_recipes()}
OLDER_SCALE = re.compile(r"\b(?:beginner|experienced|advanced|novice)s?\b", re.IGNORECASE)
BALL = re.compile(r"\d+g,\d+m\([\d,]+yd\)")
TAKES = re.compile(r"\d+balls,allofonedyelot\.Theblankettakes[\d,]+to[\d,]+m\([\d,]+to[\d,]+yd\)")
Data = Mapping[str, Any]
Holds = Callable[[str, Data], bool]


def squeezed(text: str) -> str:
    """Return a text without spaces and marks of Markdown, since lines break anywhere."""
    return re.sub(r"\s|\\|\*\*|`", "", text)


def named(words: str, data: Data) -> bool:
    """Look for name, designer, and a picture or where it is."""
    return all(squeezed(each) in words for each in (data["title"], "Designer", data["designer"])) and (
        "Thefabricfromitsrightside" in words or "Picture" in words
    )


def levelled(words: str, data: Data) -> bool:
    """Look for one of the four levels with its reason and its source."""
    level = data["level"]
    told = squeezed(level["reason"]) in words and "CraftYarnCouncil" in words
    return told and level["reason"].startswith(f"{level['name']}, because of ") and level["name"] in LEVELS


def sized(words: str, data: Data) -> bool:
    """Look for width and length after blocking, in both units."""
    sizes = re.findall(r"(?:Width|Length)([\d.]+)cm\([\d¼½¾]+in\)afterwashingandblocking", words)
    return [float(size) for size in sizes] == [data["size"]["width_cm"], data["size"]["length_cm"]]


def of_yarn(words: str, data: Data) -> bool:
    """Look for name, class and fibre of the yarn, what a ball holds, the balls and the whole length."""
    entries = {entry["name"]: squeezed(entry["text"]) for entry in data["materials"]}
    fibre = "%" in entries["Yarn"] or "fibreisnotknown" in entries["Ends to weave in"]
    whole = "CraftYarnCouncil" in entries["Yarn"] and BALL.search(entries["A ball"]) and TAKES.search(words)
    return fibre and bool(whole) and entries["Yarn"] in words


def of_needles(words: str, data: Data) -> bool:
    """Look for millimetres and US size, kind and length."""
    return bool(re.search(r"[\d.]+mm\(US[\d½]+\),.*acircularneedleof\d+cm\([\d¼½¾]+in\)orlonger", words))


def of_notions(words: str, data: Data) -> bool:
    """Look for what is needed beside yarn and needles."""
    return all(each in words for each in ("Bluntneedle", "Scissors", "Tapemeasureandscales"))


def gauged(words: str, data: Data) -> bool:
    """Look for stitches and rows over a length, in which fabric, worked flat, washed or not; or whose it borrows."""
    stated = [gauge for gauge in data["gauge"] if gauge["stated"]]
    full = all(re.search(r" sts and .* rows over 10 cm .*worked flat, .*blocking", gauge["text"]) for gauge in stated)
    return full and bool(stated) and all(squeezed(gauge["in"]) in words for gauge in data["gauge"])


def abbreviated(words: str, data: Data) -> bool:
    """Look for each abbreviation with its meaning, and each special stitch with its steps."""
    told = [(entry["name"], entry["text"]) for entry in data["abbreviations"]]
    told += [(special["name"], " ".join(special["steps"])) for special in data["special_stitches"]]
    return bool(told) and all(squeezed(name) in words and squeezed(text) in words for name, text in told)


def noted(words: str, data: Data) -> bool:
    """Look for how it is built, and for the multiples."""
    built = ("Thesidebordersareworkedwiththebody", "Themiddleisfinishedfirst")
    return any(each in words for each in built) and "stitches" in words and "Multiple" in words


def instructed(words: str, data: Data) -> bool:
    """Look for every row of every part, and the count where a part ends."""
    parts = [*data["sections"], *(border["section"] for border in data["borders"])]
    rows = all(squeezed(row["text"]) in words for part in parts for row in part["rows"])
    counts = all(f"{part['after']}stitchesontheneedle" in words for part in parts)
    return rows and counts and squeezed(data["cast_on"]["line"]) in words


def charted(words: str, data: Data) -> bool:
    """Look for a chart with its key; every charted part has its rows in words as well."""
    chart = next(picture for picture in data["pictures"] if picture["kind"] == "chart")
    whole = all(each["rows"] and each["heading"] for each in chart["charts"]) and chart["charts"] and chart["key"]
    shown = all(squeezed(each["means"]) in words for each in chart["key"])
    return bool(whole) and (shown or "Chart" in words) and all(part["rows"] for part in data["sections"])


def drawn(words: str, data: Data) -> bool:
    """Look for a schematic with its measures."""
    schematic = next(picture for picture in data["pictures"] if picture["kind"] == "schematic")
    return "Schematic" in words and str(data["size"]["width_cm"]) in " ".join(schematic["words"])


def finished(words: str, data: Data) -> bool:
    """Look for how it is finished and cared for."""
    return all(squeezed(text) in words for text in (*data["finishing"], data["care"]))


THIRTEEN: tuple[Holds, ...] = (
    named,
    levelled,
    sized,
    of_yarn,
    of_needles,
    of_notions,
    gauged,
    abbreviated,
    noted,
    instructed,
    charted,
    drawn,
    finished,
)


@pytest.fixture(scope="module")
def library() -> Services:
    """Return a library with the starters."""
    return open_library()


def asked(slug: str, construction: str, terms: str) -> dict[str, Any]:
    """Return the request of a recipe in a construction; its side borders are picked up in twelve rows of garter."""
    request = {name: value for name, value in RECIPES[slug].items() if name not in ("slug", "summary", "name")}
    if construction == "sides-picked-up":
        sides = {"component": "garter-border", "rows": 12}
        request |= {"construction": construction, "parts": {**request["parts"], "sides": sides}}
    return request | {"title": RECIPES[slug]["name"], "terms": terms}


def lacking(words: str, data: Data) -> list[str]:
    """Return the elements that a form lacks."""
    return [element.__name__ for element in THIRTEEN if not element(squeezed(words), data)]


@pytest.mark.parametrize("terms", ["us", "uk"])
@pytest.mark.parametrize("construction", ["one-piece", "sides-picked-up"])
@pytest.mark.parametrize("slug", RECIPES)
def test_every_recipe_has_all_thirteen_in_every_form(
    library: Services, slug: str, construction: str, terms: str
) -> None:
    """Text, Markdown, HTML and JSON, with exactly the abbreviations that are used."""
    request = asked(slug, construction, terms)
    answer = pages.pattern(library, request, "json")
    html = unescape(re.sub(r"<[^>]+>", " ", pages.page(library, request, "html").decode()))
    forms = (answer["text"], pages.pattern(library, request, "markdown")["text"], html)
    assert [lacking(words, answer["pattern"]) for words in forms] == [[]] * len(forms)
    assert not any(OLDER_SCALE.search(words) for words in forms)
    found = check_text(answer["text"], library.vocabulary, terms=answer["pattern"]["terms"])["findings"]
    assert [each["rule"] for each in found if each["severity"] != "note"] == []


@pytest.mark.parametrize("slug", ["harvest-basket", "three-fields"])
def test_a_page_on_paper_has_them_too(library: Services, slug: str) -> None:
    """Read back out of the PDF."""
    request = asked(slug, "one-piece", "us")
    data = pages.pattern(library, request, "json")["pattern"]
    pdf = PdfReader(io.BytesIO(pages.page(library, request, "pdf")))
    assert lacking(" ".join(page.extract_text() for page in pdf.pages), data) == []


def test_a_form_that_lacks_one_is_noticed(library: Services) -> None:
    """Without the line of its designer, its care or its chart."""
    answer = pages.pattern(library, asked("first-frost", "one-piece", "us"), "json")
    text, data = answer["text"], answer["pattern"]
    assert lacking(text.replace("Designer", ""), data) == ["named"]
    assert lacking(text.replace("Do not bleach", ""), data) == ["finished"]
    assert lacking(text.replace("Chart\n", "\n").replace("k on RS rows", ""), data) == ["charted"]
