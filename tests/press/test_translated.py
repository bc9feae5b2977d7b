"""Patterns in German: the same counts as in English, no English in rows, and what is missing marked and counted."""

import re
from collections import Counter
from dataclasses import asdict
from functools import cache

import pytest

from counterpane import wiring
from counterpane.craft.language import Language, Telling
from counterpane.craft.rows.words import NUMBER_WORDS
from counterpane.library.patterns import pages
from counterpane.press.blocks import Block, Entries, Figure, Heading, Instructions, Items, Orders, Paragraph
from counterpane.press.html import html_of
from counterpane.press.page import page
from counterpane.press.translated import Translation, words_of
from counterpane.seeding import load_vocabulary
from counterpane.seeding.languages import messages
from counterpane.seeding.recipes import load_recipes
from craft.constructions.asking import content

RECIPES = {recipe["slug"]: recipe for recipe in load_recipes()}
BODIES = ("garter", "little-twists", "rope-cable", "slipped-rib", "spider-net", "viennoise", "welts", "stocking-stitch")
NUMBER = re.compile(r"\d[\d.,]*\d|\d|[¼½¾]")
ENGLISH_WORDS = re.compile(r"\b(?:k|p|sts?|rep|Row|rows?|from|to|end|last|sl|Cast|times|twice|once|more|work|Then)\b")


@cache
def services() -> object:
    """Return a library in memory."""
    return wiring.open_library()


@cache
def both(slug: str) -> tuple[tuple[Block, ...], tuple[Block, ...], Translation]:
    """Return the English and the German blocks of a recipe, and what said them."""
    pattern, drawn = pages.written_and_drawn(services(), RECIPES[slug], "text")  # type: ignore[arg-type]
    german = Translation(wiring.telling_in("de"))
    blocks = german.blocks(pattern, drawn)
    return tuple(page(pattern, drawn)), (blocks[0], *blocks[2:]), german


def texts(block: Block) -> list[str]:
    """Return the words of a block."""
    match block:
        case Heading(text) | Paragraph(text):
            return [text]
        case Items(lines) | Orders(lines) | Instructions(lines):
            return list(lines)
        case Entries(entries):
            return [f"{entry.name} {entry.text}" for entry in entries]
    return []


def numbers(text: str, decimal: str) -> Counter[str]:
    """Return the numbers in a text, number words too, without signs of thousands."""
    if decimal == ".":
        for word, number in NUMBER_WORDS.items():
            text = re.sub(rf"\b{word}\b(?= times)", str(number), text)
        text = re.sub(r"\bonce\b", "1", re.sub(r"\btwice\b", "2", text))
        return Counter(each.replace(",", "") for each in NUMBER.findall(text))
    return Counter(each.replace(".", "").replace(",", ".") for each in NUMBER.findall(text))


@pytest.mark.parametrize("slug", RECIPES)
def test_rows_and_orders_have_the_same_counts_in_both_languages(slug: str) -> None:
    """Row by row: a word order of its own changes the order of numbers alone."""
    english, german, _ = both(slug)
    lines = [
        (one, other)
        for mine, its in zip(english, german, strict=True)
        if isinstance(mine, Instructions | Orders)
        for one, other in zip(texts(mine), texts(its), strict=True)
    ]
    assert len(lines) > 10
    for one, other in lines:
        assert numbers(one, ".") == numbers(other, ","), (one, other)


@pytest.mark.parametrize("slug", RECIPES)
def test_the_parts_worked_in_rows_have_the_same_figures(slug: str) -> None:
    """Sections, their checkpoints and where they stop: every figure of the English is in the German, and no other."""
    english, german, _ = both(slug)
    found = 0
    for mine, its in zip(english, german, strict=True):
        told = "\n".join(texts(mine))
        if isinstance(mine, Items | Paragraph) and re.match(r"Checkpoint|Stop after|Width|Garter.*rows \d+ to", told):
            found += 1
            assert numbers(told, ".") == numbers("\n".join(texts(its)), ","), told
    assert found > 5


@pytest.mark.parametrize("slug", RECIPES)
def test_no_english_word_is_left_in_rows(slug: str) -> None:
    """Rows, repeat lines and the cast-on are wholly German."""
    lines = [line for block in both(slug)[1] if isinstance(block, Instructions | Orders) for line in texts(block)]
    assert [line for line in lines if ENGLISH_WORDS.search(line)] == []


@pytest.mark.parametrize("slug", RECIPES)
def test_every_sentence_of_a_recipe_is_translated(slug: str) -> None:
    """None stands in English, and the count of sentences says so."""
    complete = both(slug)[2].completeness
    assert complete.missing == () and complete.sentences == complete.translated > 300


@pytest.mark.parametrize("body", BODIES)
def test_every_sentence_of_a_blanket_in_another_texture_is_translated(body: str) -> None:
    """Lace, cables, slipped stitches, wrapped yarn, welts: what their books and the rules say of them, too."""
    german = Translation(wiring.telling_in("de"))
    german.blocks(*pages.written_and_drawn(services(), content(body, sides="garter-border"), "text"))  # type: ignore[arg-type]
    assert german.completeness.missing == ()


def test_what_is_not_translated_is_marked_and_counted() -> None:
    """A sentence of the designer's own stands whole, in brackets; a page says to a browser that it is English."""
    telling = wiring.telling_in("de")
    own = "Knit it for Nan [the elder], who asked."
    said = Translation(telling)
    text = said.say(f"Row counts decide; a length is a check. {own}")
    assert text == f"Reihenzahlen entscheiden; eine Länge dient der Kontrolle. [englisch: {own}]"
    assert (said.completeness.sentences, said.completeness.missing) == (2, (own,))
    html = html_of([Paragraph(text)], "Nan", "us", words=words_of(telling)).decode()
    assert f'[englisch: <span lang="en">{own}</span>]</p>' in html


def test_the_words_around_a_page_are_german() -> None:
    """Those in the head and the foot of printed pages, and beside the counter of a repeat line."""
    words = words_of(wiring.telling_in("de"))
    assert [value for value in asdict(words).values() if "englisch" in value] == [words.english]
    assert (words.before, words.done) == ("vor Reihe 1", "nach der letzten Reihe")


@pytest.mark.parametrize("slug", RECIPES)
def test_every_sentence_of_a_recipe_is_found_in_the_template(slug: str) -> None:
    """Said in English by its own messages a pattern is as it was, so that no message says another thing."""
    said = {each.key: (each.english, each.plural) if each.plural else (each.english,) for each in messages()}
    telling = Telling(Language("en", "English", said, reviewed=True), messages(), load_vocabulary())
    pattern, drawn = pages.written_and_drawn(services(), RECIPES[slug], "text")  # type: ignore[arg-type]
    english, same = page(pattern, drawn), Translation(telling).blocks(pattern, drawn)
    for mine, its in zip(english, same, strict=True):
        unmarked = [line.replace("[in English: ", "").replace(".]", ".") for line in texts(its)]
        if not isinstance(mine, Figure) and mine != Entries(pattern.abbreviations):
            assert unmarked == texts(mine)
