"""A pattern as one page of HTML: whole in itself, every word of the pattern in it, rows to tick."""

from __future__ import annotations

import re
from base64 import b64decode
from collections.abc import Mapping
from html import unescape

from counterpane.craft.component import Component
from counterpane.craft.drawing import Picture
from counterpane.library.patterns.drawings import pictures
from counterpane.library.patterns.patterns import write_pattern
from counterpane.press.blocks import Instructions, Items
from counterpane.press.html import as_html
from counterpane.press.page import page
from craft.constructions.asking import planned
from craft.pattern.plans import eyelets, vocabulary, waffle

DRAWN = (
    Picture(
        "A <frame>", '<svg xmlns="http://www.w3.org/2000/svg" width="20" height="30"><desc>Two &amp; two.</desc></svg>'
    ),
)


def _words(html: str) -> str:
    return unescape(re.sub(r"<[^>]+>", " ", html))


def test_all_words_of_the_pattern_are_on_the_page() -> None:
    """Rows and lists as they stand in the pattern."""
    pattern = write_pattern(eyelets(), vocabulary())
    html = _words(as_html(pattern).decode())
    lines = [line for block in page(pattern) if isinstance(block, Instructions) for line in block.lines]
    items = [text for block in page(pattern) if isinstance(block, Items) for text in block.texts]
    assert all(words in html for words in (*lines, *items, pattern.title))


def test_each_row_can_be_ticked_under_a_name_of_its_own() -> None:
    """As many boxes as rows."""
    pattern = write_pattern(waffle(), vocabulary())
    names = re.findall(r'type="checkbox" id="([^"]+)"', as_html(pattern).decode())
    assert sum(len(section.rows) for section in pattern.sections) == len(names) == len(set(names))


def test_nothing_is_fetched_from_elsewhere() -> None:
    """No address but that of the SVG language, and a policy that allows none."""
    html = as_html(write_pattern(waffle(), vocabulary()), DRAWN).decode()
    assert not re.findall(r"(?:src|href)=[\"'](?!data:|#)", html)
    assert "default-src 'none'; img-src data:;" in html


def test_a_picture_says_in_words_what_it_shows() -> None:
    """And what is drawn is in the page, unchanged."""
    html = as_html(write_pattern(waffle(), vocabulary()), DRAWN).decode()
    assert 'alt="Two &amp; two."' in html
    data = re.search(r"base64,([^\"]+)", html)
    assert data and b64decode(data[1]).decode() == DRAWN[0].svg


def test_signs_of_the_language_in_a_title_stay_signs() -> None:
    """A title is a text that anybody may write."""
    html = as_html(write_pattern(waffle(), vocabulary(), title="<script>alert(1)</script>")).decode()
    assert "<script>alert" not in html
    assert "&lt;script&gt;alert(1)&lt;/script&gt;" in html


def test_equal_plans_give_equal_bytes(starters: Mapping[str, Component]) -> None:
    """With all their pictures."""
    plans = (planned(starters, vocabulary(), "eyelet-dots") for _ in range(2))
    one, other = (
        as_html(write_pattern(plan, vocabulary()), pictures(plan, vocabulary(), "Rime", "us", close_up=False))
        for plan in plans
    )
    assert one == other
