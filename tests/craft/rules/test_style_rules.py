"""Every style rule: its bad example trips it alone, the same made good none, and what is corrected is in style."""

from __future__ import annotations

import pytest

from counterpane.craft.checking import examine
from counterpane.craft.findings import Finding, Rule
from counterpane.craft.rules import judge_text
from counterpane.craft.rules.style import RULES, judge_style
from counterpane.craft.stitches import Vocabulary
from counterpane.craft.styles import Style
from counterpane.seeding.styles import load_styles

HOUSE = load_styles()["counterpane"]
PLAIN = load_styles()["plain-words"]
POCKET = load_styles()["pocket-card"]
SILENT = Style("silent", "Silent", "As the designer likes, throughout.", "house")


def judged(text: str, vocabulary: Vocabulary, style: Style = HOUSE) -> tuple[Finding, ...]:
    """Hold a text against a style."""
    return judge_style(examine(text, vocabulary), style)


@pytest.mark.parametrize("rule", RULES, ids=lambda rule: rule.slug)
def test_a_bad_example_trips_exactly_its_rule(rule: Rule, vocabulary: Vocabulary) -> None:
    """Each bad example departs from the style of the house in this one way."""
    assert {finding.rule for finding in judged(rule.bad, vocabulary)} == {rule.slug}


@pytest.mark.parametrize("rule", RULES, ids=lambda rule: rule.slug)
def test_a_good_example_trips_no_rule(rule: Rule, vocabulary: Vocabulary) -> None:
    """The same in the style of the house is without a finding."""
    assert judged(rule.good, vocabulary) == ()


@pytest.mark.parametrize("rule", RULES, ids=lambda rule: rule.slug)
def test_a_style_finding_is_a_note_with_a_place_and_a_next_step(rule: Rule, vocabulary: Vocabulary) -> None:
    """Style never stands in a knitter's way."""
    for finding in judged(rule.bad, vocabulary):
        assert finding.severity == "note"
        assert finding.line and finding.column and finding.message and finding.hint


@pytest.mark.parametrize("rule", [rule for rule in RULES if rule.slug != "style-terms"], ids=lambda rule: rule.slug)
def test_a_corrected_line_is_in_style(rule: Rule, vocabulary: Vocabulary) -> None:
    """Lines are corrected one by one until nothing departs."""
    lines = rule.bad.splitlines()
    for _ in range(10):
        found = judged("\n".join(lines), vocabulary)
        for finding in found[:1]:
            lines[(finding.line or 1) - 1] = finding.corrections[0]
    assert judged("\n".join(lines), vocabulary) == ()


CASES = [
    (HOUSE, "2nd and 4th rows: Purl.", "Rows 2 and 4: Purl."),
    (HOUSE, "2ND ROW (WS): Purl.", "Row 2 (WS): Purl."),
    (HOUSE, "R1: Knit.", "Row 1: Knit."),
    (HOUSE, "Rnd 1: Knit.", "Round 1: Knit."),
    (HOUSE, "Row 1: *k2, p2; rep from * to end.", "Row 1: *K2, p2; rep from * to end."),
    (HOUSE, "Row 1: K4 = 4 sts.", "Row 1: K4 (4 sts)."),
    (HOUSE, "Row 1: K4. [4 stitches]", "Row 1: K4. (4 stitches)"),
    (HOUSE, "Row 1: K 4 sts, Repeat from * to end.", "Row 1: K 4 sts, rep from * to end."),
    (HOUSE, "Round 1: *K1; rep from * to end of rnd.", "Round 1: *K1; rep from * to end."),
    (HOUSE, "Row 1: *K1; rep from * to the last st, k1.", "Row 1: *K1; rep from * to last st, k1."),
    (HOUSE, "Row 1: K1, ((k1, p1) twice, k1) 2 times.", "Row 1: K1, [(k1, p1) twice, k1] 2 times."),
    (HOUSE, "Row 1: Knit 2 tog, k2. (3 sts)", "Row 1: K2tog, k2. (3 sts)"),
    (HOUSE, "Cast on 95 (113: 131) sts.\nRow 1: Knit.", "Cast on 95 (113, 131) sts."),
    (HOUSE, "Cast on 131 (113, 95) sts.\nRow 1: Knit.", "Cast on 95 (113, 131) sts."),
    (POCKET, "Row 12: k2, p2 (4 sts)", "Row 12: k2, p2 [4 sts]"),
    (POCKET, "Row 1 (WS): k2, p2.", "Row 1 [WS]: k2, p2."),
    (PLAIN, "Row 11 (right side): Knit.", "11th row (right side): Knit."),
    (PLAIN, "Rows 21-23: Purl.", "21st-23rd rows: Purl."),
    (PLAIN, "1st row: K2, *p2; repeat from * to end.\nCast off.", "1st row: K2, *p2; repeat from * to the end."),
    (PLAIN, "1st row: K to last 2 sts, k2.\nCast off.", "1st row: K to the last 2 sts, k2."),
    (PLAIN, "1st row: Knit to the end. [12 sts]\nCast off.", "1st row: Knit to the end. — 12 sts"),
]


@pytest.mark.parametrize(("style", "text", "better"), CASES, ids=[case[1].partition("\n")[0] for case in CASES])
def test_a_line_is_put_into_the_style(style: Style, text: str, better: str, vocabulary: Vocabulary) -> None:
    """The correction changes the words that depart and nothing else."""
    found = [finding for finding in judged(text, vocabulary, style) if finding.rule != "style-terms"]
    assert better in [correction for finding in found for correction in finding.corrections]


SOUND = [
    "Row 3: K2, (k1, yo, k1) into next st, p2tog.",
    "Setup row: Knit.",
    "Next row: Purl.",
    "Row 1: K2 (4 sts) more.",
    "Rows 1–4: Knit.",
    "Work in garter stitch for 12 in.",
]


@pytest.mark.parametrize("text", SOUND)
def test_what_the_style_says_nothing_of_is_left_alone(text: str, vocabulary: Vocabulary) -> None:
    """A name of a row, brackets round one stitch and a length in one unit are as the designer likes."""
    assert judged(text, vocabulary) == ()


@pytest.mark.parametrize("rule", RULES, ids=lambda rule: rule.slug)
def test_a_style_that_asks_for_nothing_finds_nothing(rule: Rule, vocabulary: Vocabulary) -> None:
    """A key that a style leaves out is as the designer likes, whatever is printed."""
    assert judged(rule.bad, vocabulary, SILENT) == ()


def test_departures_of_one_kind_are_one_finding(vocabulary: Vocabulary) -> None:
    """A designer is asked once about forty labels."""
    text = "\n".join(f"{number}th row: Knit." for number in range(4, 14))
    (finding,) = judged(text, vocabulary)
    assert "here and in 9 more places" in finding.message


def test_a_text_may_accept_a_departure_and_give_it_a_level(vocabulary: Vocabulary) -> None:
    """The remark meets its finding only where a style is asked for, and is no finding elsewhere."""
    accepting = "Accept style-row-label throughout: so the magazine has it.\n1st row: K2.\n"
    assert "Accepted on line 1" in judged(accepting, vocabulary)[0].message
    assert "accepts-nothing" not in {finding.rule for finding in judge_text(examine(accepting, vocabulary))}
    treated = "Treat style-row-label as warning: of the house.\n1st row: K2.\n"
    assert [finding.severity for finding in judged(treated, vocabulary)] == ["warning"]


def test_a_text_without_rows_and_one_of_signs_depart_nowhere(vocabulary: Vocabulary) -> None:
    """Whatever is in a text, holding it against a style ends, and soon."""
    assert judged("", vocabulary) == ()
    long = (
        "(",
        "1",
        "-",
        "1 (2, 3) ",
        "1 (2, ",
        "to the ",
        "rep from ",
        "1.1",
        "10 cm (",
        "(k1) 2 times, ",
        "k2tog, ",
    )
    hostile = (*(f"Row 1: {sign * (20_000 // len(sign))} sts" for sign in long), f"1st{' ' * 500}row: K2.", "\x00\n")
    for text in hostile:
        assert all(finding.severity == "note" for finding in judged(text, vocabulary))


@pytest.mark.parametrize(
    "text",
    [
        "Cast on 6 sts.\nRow 1: (K1,\np1) 3 times.",
        "Cast on 6 sts.\nRow 1: (6).",
        "Cast on 8 sts.\nRow 1: *K2, p2; rep from * to last 4 sts, k4.",
    ],
)
def test_what_goes_over_a_line_or_says_no_word_departs_from_nothing(text: str, vocabulary: Vocabulary) -> None:
    """A bracket closed on the next line is left alone; a count has no first letter; what is in style is in style."""
    assert judged(text, vocabulary) == ()


def test_a_stitch_whose_name_is_broken_over_two_lines_is_left_alone(vocabulary: Vocabulary) -> None:
    """It could only be put right on both; on one line the same name is a departure."""
    text = "Cast on 12 sts.\nRow 1 (RS): K2, yo, knit 2{}together, k8.\nRow 2: Knit.\n"
    found = [[finding.rule for finding in judged(text.format(gap), vocabulary)] for gap in (" ", "\n")]
    assert ["style-abbreviation" in rules for rules in found] == [True, False]
