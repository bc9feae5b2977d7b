"""A text says which finding it accepts and why; nothing disappears by it, and nothing is passed as right."""

from __future__ import annotations

import pytest

from counterpane.craft.checking import examine
from counterpane.craft.findings import Finding, Rule
from counterpane.craft.rules import accepting, judge_text
from counterpane.craft.stitches import Vocabulary
from counterpane.library.texts.checks import check_text, corrected

HOLDER = "Cast on 10 sts.\nAccept row-leaves-stitches: the last 3 sts stay on a holder.\nRow 1: K7.\nRow 2: Knit.\n"


def judged(text: str, vocabulary: Vocabulary) -> list[Finding]:
    """Return the findings of a text."""
    return list(judge_text(examine(text, vocabulary)))


def said(text: str, vocabulary: Vocabulary) -> list[tuple[str, str, int | None]]:
    """Return rule, severity and line of each finding."""
    return [(finding.rule, finding.severity, finding.line) for finding in judged(text, vocabulary)]


def test_an_accepted_finding_stays_as_a_note_with_its_reason(vocabulary: Vocabulary) -> None:
    """The message ends with where and why it was accepted, and says that the counts stay unknown."""
    (found,) = judged(HOLDER, vocabulary)
    assert (found.rule, found.severity, found.line) == ("row-leaves-stitches", "note", 3)
    assert "The counts from here on stay unknown." in found.message
    assert found.message.endswith("Accepted on line 2: the last 3 sts stay on a holder.")


def test_what_is_accepted_is_not_thereby_counted(vocabulary: Vocabulary) -> None:
    """The row keeps its unknown count after, and so do the rows behind it."""
    rows = check_text(HOLDER, vocabulary)["rows"]
    assert [(row["before"], row["after"]) for row in rows] == [(10, None), (None, None)]


def test_what_is_accepted_is_not_corrected(vocabulary: Vocabulary) -> None:
    """A text that accepts the finding is left as it is."""
    assert corrected(HOLDER, vocabulary) == HOLDER
    assert corrected(HOLDER.replace("Accept", "Expect"), vocabulary) != HOLDER.replace("Accept", "Expect")


def test_an_acceptance_speaks_of_the_row_below_it_alone(vocabulary: Vocabulary) -> None:
    """A row elsewhere keeps its finding, and the line that meets none is named."""
    text = "Cast on 10 sts.\nAccept row-leaves-stitches: a holder.\nRow 1: Knit.\nRow 2: K7.\n"
    found = said(text, vocabulary)
    assert ("accepts-nothing", "note", 2) in found and ("row-leaves-stitches", "error", 4) in found


def test_an_acceptance_throughout_speaks_of_the_whole_text(vocabulary: Vocabulary) -> None:
    """Every finding of the rule becomes a note, wherever the line stands."""
    text = "Accept repeat-assumed throughout: no room for stars.\nRow 1: K2, p2, repeat.\nRow 2: K1, p1, repeat.\n"
    assert said(text, vocabulary) == [("repeat-assumed", "note", 2), ("repeat-assumed", "note", 3)]
    assert all("Accepted on line 1: no room for stars." in found.message for found in judged(text, vocabulary))


@pytest.mark.parametrize("level", ["error", "warning"])
def test_a_rule_is_treated_as_of_another_level(level: str, vocabulary: Vocabulary) -> None:
    """A note becomes what the house makes of it, and says so."""
    text = f"Treat repeat-assumed as {level}: house rule.\nCast on 8 sts.\nRow 1: K2, p2, repeat.\n"
    (found,) = judged(text, vocabulary)
    assert (found.rule, found.severity) == ("repeat-assumed", level)
    assert found.message.endswith(f"{level} on line 1: house rule.")


def test_a_word_that_cannot_be_read_may_be_accepted_and_stays_uncounted(vocabulary: Vocabulary) -> None:
    """The error becomes a note; the row has no count after it, which the note says."""
    text = "Cast on 4 sts.\nAccept unknown-term: explained in the chart.\nRow 1: K1, zork, k1.\nRow 2: Purl.\n"
    (found,) = judged(text, vocabulary)
    assert found.severity == "note" and "stay unknown" in found.message
    assert [row["after"] for row in check_text(text, vocabulary)["rows"]] == [None, None]


def test_a_statement_may_be_accepted(vocabulary: Vocabulary) -> None:
    """The line above the multiple is about the multiple."""
    remark = "Accept stated-multiple-wasteful: to suit the border."
    text = f"{remark}\n(multiple of 12 sts plus 2)\nRow 1: K2, *p3, k3; rep from * to end.\n"
    assert said(text, vocabulary) == [("stated-multiple-wasteful", "note", 2)]


@pytest.mark.parametrize("lead", ["", "  ", "- ", "# ", "// ", "> ", "\t"])
def test_a_remark_is_neither_row_nor_prose(lead: str, vocabulary: Vocabulary) -> None:
    """It ends no row, begins none, is no heading, and moves no line number."""
    remark = f"{lead}Accept row-runs-short: knit 3 rows, purl 2."
    text = f"My square\nCast on 8 sts.\n{remark}\nRow 1: *K2, p2; rep from * to end.\n{remark}\nRow 2: Purl.\n"
    answer = check_text(text, vocabulary)
    assert [(row["label"], row["line"], row["section"]) for row in answer["rows"]] == [("1", 4, None), ("2", 6, None)]
    assert {finding["rule"] for finding in answer["findings"]} == {"accepts-nothing"}


def test_a_sentence_that_begins_with_accept_is_prose(vocabulary: Vocabulary) -> None:
    """Only the name of a rule behind the word makes a remark of it."""
    assert said("Accept a little looseness: it blocks out.\nCast on 4 sts.\nRow 1: Knit.\n", vocabulary) == []


@pytest.mark.parametrize("rule", accepting.RULES, ids=lambda rule: rule.slug)
def test_a_bad_example_trips_its_rule(rule: Rule, vocabulary: Vocabulary) -> None:
    """The remark of each bad example is found by its rule."""
    assert rule.slug in {found.rule for found in judged(rule.bad, vocabulary)}


@pytest.mark.parametrize("rule", accepting.RULES, ids=lambda rule: rule.slug)
def test_a_good_example_has_nothing_above_a_note(rule: Rule, vocabulary: Vocabulary) -> None:
    """Each good example names a rule, says why, and meets its finding."""
    found = judged(rule.good, vocabulary)
    assert all(finding.severity == "note" and finding.rule != rule.slug for finding in found)


def test_the_nearest_name_is_offered_for_a_misspelt_one(vocabulary: Vocabulary) -> None:
    """A slip in the name accepts nothing, and the hint says what was probably meant."""
    found = next(
        f for f in judged(HOLDER.replace("stitches:", "stiches:"), vocabulary) if f.rule == "accepts-unknown-rule"
    )
    assert found.hint == "Did you mean “row-leaves-stitches”?"
