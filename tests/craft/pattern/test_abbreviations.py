"""The abbreviation list holds exactly what the rows use."""

import pytest

from counterpane.craft.pattern.abbreviations import abbreviations, specials
from counterpane.craft.rows.instructions import read_text
from counterpane.craft.rows.say import say_line
from counterpane.craft.stitches import Terms
from craft.pattern.plans import vocabulary


def listed(rows: str, terms: Terms = "us") -> dict[str, str]:
    """Return the abbreviations of these rows as they are written in the terms."""
    read = read_text(rows, vocabulary(), "us").rows
    lines = [say_line(row, vocabulary(), terms) for row in read]
    return {entry.name: entry.text for entry in abbreviations(read, lines, vocabulary(), terms)}


@pytest.mark.parametrize(
    ("rows", "names"),
    [
        ("Row 1 (RS): knit.\nRow 2 (WS): purl.", ["RS", "WS"]),
        ("Row 1: k to last 2 sts, p2.", ["k", "p", "sts"]),
        ("Row 1: *k2, p1; rep from * to last st, k1.", ["*", "k", "p", "rep", "st"]),
        ("Row 1: [k1, p1] 3 times.", ["[ ]", "k", "p"]),
        ("Row 1: k1 tbl, k2tog.", ["k tbl", "k2tog"]),
        ("Row 1: sl 1 pwise wyif, k2.", ["k", "pwise", "sl", "wyif"]),
        ("Row 1: ssk, yo, k1, m1l.", ["k", "m1L", "ssk", "yo"]),
    ],
)
def test_exactly_the_short_words_of_the_rows_are_listed(rows: str, names: list[str]) -> None:
    """A word that is written out, and a stitch inside another's name, need no entry."""
    assert list(listed(rows)) == names


def test_meanings_are_those_of_the_vocabulary() -> None:
    """What a stitch is said to be is kept with the stitch."""
    assert listed("Row 1: k2tog, k1.")["k2tog"] == vocabulary()["k2tog"].said["us"]


def test_a_uk_list_holds_each_name_that_a_yarn_over_is_given() -> None:
    """Between knits it is yfwd, between purls yrn; both stand in one entry."""
    found = listed("Row 1: k1, yo, k2, p1, yo, p1.", "uk")
    assert found["yfwd, yrn"] == vocabulary()["yo"].said["uk"]
    assert "yo" not in found


def test_a_cable_is_told_in_steps_and_the_list_points_there() -> None:
    """A stitch that crosses needs more than a line."""
    read = read_text("Row 1: k2, c4f, k2.", vocabulary()).rows
    (cable,) = specials(read, vocabulary(), "us")
    assert (cable.name, len(cable.steps)) == ("C4F", 3)
    assert cable.steps[0] == "Slip 2 to a cable needle held in front."
    assert listed("Row 1: k2, c4f, k2.")["C4F"] == "see Special stitches"


def test_plain_stitches_and_decreases_are_not_special() -> None:
    """A decrease is said in one line."""
    read = read_text("Row 1: k2, ssk, p2, yo, k2tog.", vocabulary()).rows
    assert specials(read, vocabulary(), "us") == ()


def test_what_only_the_last_repeat_works_is_listed() -> None:
    """A stitch that the row works once is looked up as any other."""
    assert "k2tog" in listed("Row 1 (RS): *k1, p1; rep from * to end, ending last rep k2tog.")
