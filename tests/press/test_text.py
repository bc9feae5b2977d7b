"""A pattern as plain text and as Markdown: what stands where, and what a reader of rows makes of it."""

from collections.abc import Callable
from itertools import pairwise

import pytest

from counterpane.craft.constructions import Plan
from counterpane.craft.pattern import Pattern
from counterpane.craft.stitches import Terms
from counterpane.library.patterns.patterns import write_pattern
from counterpane.library.texts.checks import check_text
from counterpane.press.markdown import as_markdown
from counterpane.press.prose import WIDTH
from counterpane.press.text import as_text
from craft.pattern.plans import eyelets, moss, vocabulary, waffle

PRESSES = [as_text, as_markdown]
PLANS = [waffle, moss, eyelets]
HEADINGS = (
    "Finished size, Gauge, Materials, Abbreviations, Notes, Cast-on: Long-tail cast-on, Bottom border, Body, "
    "Top border, Bind-off: Plain bind-off, Finishing, Care, Cautions, Credits"
)
HARMFUL = [
    "Row 1: k2tog to end. (multiple of 5 sts)",
    "Cast on 20 sts.\nRow 2: purl.",
    "# *Blanket* [x](y) \x00 <b>",
    "Rep rows 1–4 until piece measures 60 cm.",
]


def text_of(plan: Plan, terms: Terms = "us") -> str:
    """Return a plan as text."""
    return as_text(write_pattern(plan, vocabulary(), terms))


@pytest.mark.parametrize("press", PRESSES)
@pytest.mark.parametrize("plan", PLANS)
@pytest.mark.parametrize("terms", ["us", "uk"])
def test_a_page_goes_back_through_the_check_without_a_finding(
    press: Callable[[Pattern], str], plan: Callable[[], Plan], terms: Terms
) -> None:
    """Not even a note, also where nobody says which terms it is in."""
    checked = check_text(press(write_pattern(plan(), vocabulary(), terms)), vocabulary())
    assert checked["findings"] == []
    assert checked["terms"] == terms


@pytest.mark.parametrize("press", PRESSES)
def test_rows_belong_to_the_section_above_them(press: Callable[[Pattern], str]) -> None:
    """The headings of the page are the sections of the check."""
    checked = check_text(press(write_pattern(waffle(), vocabulary())), vocabulary())
    assert [row["section"] for row in checked["rows"]] == ["Bottom border"] * 2 + ["Body"] * 4 + ["Top border"] * 2


def test_headings_stand_in_reading_order() -> None:
    """What is needed comes before the first stitch, and the cautions are never left out."""
    lines = text_of(waffle()).split("\n")
    headings = [line for line, rule in pairwise(lines) if rule and set(rule) == {"-"}]
    assert ", ".join(headings) == HEADINGS


def test_prose_and_rows_keep_to_the_page() -> None:
    """Eighty columns, in both terms."""
    assert max(map(len, (text_of(eyelets()) + text_of(eyelets(), "uk")).split("\n"))) <= WIDTH


def test_a_uk_text_speaks_of_tension_and_casting_off() -> None:
    """No US word is left in it."""
    text = text_of(waffle(), "uk")
    assert "\nTension\n" in text
    assert "cast off on the next row" in text
    assert not any(word in text.lower() for word in ("gauge", "bind off", "bind-off", "stockinette"))


@pytest.mark.parametrize("press", PRESSES)
def test_the_same_plan_gives_the_same_bytes(press: Callable[[Pattern], str]) -> None:
    """Twice written is once written."""
    one, other = (press(write_pattern(eyelets(), vocabulary())) for _ in range(2))
    assert one.encode() == other.encode()


@pytest.mark.parametrize("press", PRESSES)
@pytest.mark.parametrize("title", HARMFUL)
def test_a_title_can_change_nothing_that_is_worked(press: Callable[[Pattern], str], title: str) -> None:
    """A title like a row, a cast-on or Markdown stays a title."""
    checked = check_text(press(write_pattern(waffle(), vocabulary(), title=title)), vocabulary())
    assert checked["findings"] == []
    assert (checked["cast_on"], len(checked["rows"])) == (151, 8)


def test_a_stop_is_said_before_the_first_stitch() -> None:
    """Nobody should find it when the blanket is done."""
    finding = {
        "rule": "x",
        "reference": "R12",
        "severity": "stop",
        "basis": "house",
        "message": "Openings.",
        "source": "y",
    }
    text = as_text(write_pattern(waffle(), vocabulary(), safety={"findings": [finding]}))
    assert text.index("Safety says stop") < text.index("Cast on 151 sts.")
    assert "Stop (R12, house): Openings. Source: y." in text


def test_what_was_not_assessed_is_printed_as_no_pass() -> None:
    """Nothing near safety reads like a tick."""
    text = text_of(waffle())
    assert "What is not assessed was not looked at. That is no pass." in text
    assert not any(word in text for word in ("✓", "✔", "approved", "all clear"))


def test_rows_of_markdown_are_list_items_and_its_signs_are_escaped() -> None:
    """A star in a row is a star, and a sign in a title is no markup."""
    text = as_markdown(write_pattern(waffle(), vocabulary(), title="*Snow* [1]"))
    assert text.startswith("# \\*Snow\\* \\[1\\]\n")
    assert "\n- Row 1 (RS): K6, p1, *k2, p1; rep from * to last 6 sts, k6.\n" in text
    assert "\nRep rows 1–4 44 times more.\nThen work rows 1–2 once more.\n" in text
