"""The answer to a text of rows: counts, places, and one count error a piece."""

from __future__ import annotations

from typing import Any

import pytest

from counterpane.craft.stitches import Vocabulary
from counterpane.library.texts.checks import check_text, corrected


def counts(answer: dict[str, Any]) -> list[tuple[int | None, int | None]]:
    """Return the counts before and after each row."""
    return [(row["before"], row["after"]) for row in answer["rows"]]


def said(answer: dict[str, Any]) -> list[tuple[str, str, int]]:
    """Return rule, severity and line of each finding."""
    return [(finding["rule"], finding["severity"], finding["line"]) for finding in answer["findings"]]


def test_a_sound_text_has_its_multiple_and_no_finding(vocabulary: Vocabulary) -> None:
    """The multiple follows from the rows, and the least count that works is the cast-on."""
    answer = check_text("Row 1: K2, *p3, k3; rep from * to end.\nRow 2: Purl.", vocabulary)
    assert answer["multiple"] == {"of": 6, "plus": 2, "least": 8}
    assert (answer["cast_on"], answer["drift"], counts(answer)) == (8, 0, [(8, 8), (8, 8)])
    assert answer["findings"] == []


def test_the_cast_on_asked_for_beats_the_stated_one(vocabulary: Vocabulary) -> None:
    """A cast-on given is followed, and the difference is a warning."""
    answer = check_text("Cast on 20 sts.\nRow 1: Knit.", vocabulary, cast_on=24)
    assert answer["cast_on"] == 24
    assert said(answer) == [("cast-on-differs", "warning", 1)]


def test_the_row_where_a_knitter_is_stuck_has_no_count_after(vocabulary: Vocabulary) -> None:
    """Counts are true up to the row that fails; behind it they are not known."""
    text = "Cast on 10 sts.\nRow 1: Knit.\nRow 2: *K2, p2; rep from * to end.\nRow 3: Knit."
    assert counts(check_text(text, vocabulary)) == [(10, 10), (10, None), (None, None)]


def test_exactly_one_count_error_stands_in_a_piece(vocabulary: Vocabulary) -> None:
    """A second row that would fail as well is not reported, since nobody gets there."""
    answer = check_text(
        "Cast on 9 sts.\nRow 1: *K2, p2; rep from * to end.\nRow 2: K1, *p3; rep from * to end.", vocabulary
    )
    assert [finding["severity"] for finding in answer["findings"]].count("error") == 1


def test_a_text_that_no_count_works_for_has_no_counts(vocabulary: Vocabulary) -> None:
    """Where no start exists, before and after are null in every row, and the first that cannot follow is named."""
    answer = check_text("Row 1: *K3, p1; rep from * to end.\nRow 2: *K5, p1; rep from * to last st, k1.", vocabulary)
    assert counts(answer) == [(None, None), (None, None)]
    assert ("rows-do-not-join", "error", 2) in said(answer)


def test_a_row_that_cannot_be_read_hides_no_finding_of_another(vocabulary: Vocabulary) -> None:
    """Reading goes on after a fault; counting does not."""
    answer = check_text("Cast on 4 sts.\nRow 1: K1, skq, k1.\nRow 2: K1, (p1, k2.", vocabulary)
    assert said(answer) == [("unknown-term", "error", 2), ("bracket-not-closed", "error", 3)]
    assert (answer["multiple"], counts(answer)) == (None, [(4, None), (None, None)])


def test_a_cast_on_outside_the_stated_multiple_is_the_cause(vocabulary: Vocabulary) -> None:
    """The knitter is stuck in the row; the printed cast-on is named as what is odd."""
    text = "(multiple of 6 sts plus 2)\nCast on 21 sts.\nRow 1: K2, *p3, k3; rep from * to end."
    assert said(check_text(text, vocabulary)) == [
        ("stated-count-wrong", "warning", 2),
        ("repeat-does-not-fit", "error", 3),
    ]


def test_a_fixed_row_takes_one_count(vocabulary: Vocabulary) -> None:
    """A row without a repeat works over one count, which stands under `fixed`."""
    answer = check_text("Row 1: K24.\nRow 2: *K2, p2; rep from * to end.", vocabulary)
    assert (answer["multiple"], answer["fixed"]) == (None, 24)


def test_a_repeat_line_applies_its_passes(vocabulary: Vocabulary) -> None:
    """Rows are listed once, at the first pass; what follows a repeat line begins with the count it leaves."""
    answer = check_text(
        "Cast on 5 sts.\nRow 1: K1, yo, k to end.\nRep row 1 9 times more. (15 sts)\nRow 2: Purl.", vocabulary
    )
    assert counts(answer) == [(5, 6), (15, 15)]
    assert [finding["severity"] for finding in answer["findings"]] == ["note"]


def test_rows_worked_until_a_count_remains_must_reach_it(vocabulary: Vocabulary) -> None:
    """41 stitches losing 2 a pass reach 5; 42 never do."""
    text = (
        "Cast on {} sts.\nRow 1: K1, ssk, k to last 3 sts, k2tog, k1.\nRow 2: Purl.\nRep rows 1-2 until 5 sts remain."
    )
    assert said(check_text(text.format(41), vocabulary)) == []
    assert said(check_text(text.format(42), vocabulary)) == [("count-drifts", "error", 4)]


def test_decreases_spread_over_rows_of_the_same_words_are_counted_one_by_one(vocabulary: Vocabulary) -> None:
    """Each row loses the number that it names, though the words are those of the row before."""
    rows = "\n".join(f"Row {i}: K5, p to last 5 sts, dec {i + 2} sts evenly, k5." for i in range(1, 4))
    assert counts(check_text(f"Cast on 40 sts.\n{rows}", vocabulary)) == [(40, 37), (37, 33), (33, 28)]


def test_rows_that_come_back_to_their_count_by_chance_can_be_worked_again(vocabulary: Vocabulary) -> None:
    """12 stitches become 18 and 12 again, whatever becomes of 14."""
    text = "Cast on {} sts.\nRow 1: *K1, kfb; rep from * to end.\nRow 2: [K2tog] 6 times, k to end.\nRep rows 1-2."
    assert said(check_text(text.format(12), vocabulary)) == [("count-drifts", "note", 4)]
    assert said(check_text(text.format(14), vocabulary)) == [("count-drifts", "error", 4)]


def test_a_count_after_unknown_passes_is_not_known(vocabulary: Vocabulary) -> None:
    """A length does not say how many passes; where they change the count, later rows have none."""
    text = "Cast on 5 sts.\nRow 1: Yo, k to end.\nRep row 1 until piece measures 20 cm.\nRow 2: Purl."
    assert counts(check_text(text, vocabulary)) == [(5, 6), (None, None)]


def test_several_progressions_stand_under_classes(vocabulary: Vocabulary) -> None:
    """At most one of multiple, fixed and classes is set."""
    answer = check_text("Row 1: Knit.", vocabulary)
    assert (answer["multiple"], answer["fixed"], answer["classes"]) == ({"of": 1, "plus": 0, "least": 1}, None, None)


def test_an_empty_text_has_no_rows(vocabulary: Vocabulary) -> None:
    """Nothing is counted, and the finding says how a row begins."""
    answer = check_text("", vocabulary)
    assert (answer["rows"], answer["cast_on"], said(answer)) == ([], None, [("no-rows", "error", 1)])


@pytest.mark.parametrize("count", [10**17, 10**18])
def test_a_huge_count_costs_no_more_than_a_small_one(count: int, vocabulary: Vocabulary) -> None:
    """The closed form follows any count exactly."""
    answer = check_text(f"Cast on {count} sts.\nRow 1: *K2, p2; rep from * to end.", vocabulary, count)
    assert counts(answer) == [(count, count)]


def test_correcting_changes_only_the_wrong_row(vocabulary: Vocabulary) -> None:
    """The row that fits is put in the place of the one that does not; every other character stays."""
    text = "My square\r\n\r\nCast on 11 sts.\r\nRow 1: K8, p4.  \r\nRow 2: purl\r\n"
    assert corrected(text, vocabulary) == text.replace("K8, p4.", "K8, p3.")


def test_correcting_mends_a_printed_count(vocabulary: Vocabulary) -> None:
    """A count that is not true is replaced by the true one."""
    text = "Cast on 10 sts.\nRow 1: K1, yo, k to end. (12 sts)\nRow 2: Purl. (11 sts)\n"
    assert corrected(text, vocabulary) == text.replace("12 sts", "11 sts")


def test_a_text_without_a_known_correction_stays_as_it_is(vocabulary: Vocabulary) -> None:
    """What cannot be corrected is not touched."""
    text = "Cast on 4 sts.\nRow 1: K1, zork, k1.\n"
    assert corrected(text, vocabulary) == text


def test_bands_that_need_not_nest_are_no_misprint(vocabulary: Vocabulary) -> None:
    """Sections with repeats of 8 and of 3 share every 24th count by design; within one section that would be odd."""
    basket = "Basket\nRow 1: *K4, p4; rep from * to end.\nRow 2: *K4, p4; rep from * to end.\n"
    waffle = "Waffle\nRow 1: *K1, p2; rep from * to end.\n"
    text = "My blanket\n\nCast on 24 sts.\n\n" + basket + "\n" + waffle
    assert said(check_text(text, vocabulary)) == []
    merged = text.replace("Waffle\nRow 1", "Row 3").replace("Basket\n", "")
    assert ("row-repeat-differs", "warning", 8) in said(check_text(merged, vocabulary))


def test_a_printed_count_says_with_what_to_begin(vocabulary: Vocabulary) -> None:
    """Without a cast-on, the count to begin with is the least at which the printed count is true."""
    text = "Row 1: K2, *p3, k2; rep from * to end. (142 sts)\nRow 2: Purl."
    assert (check_text(text, vocabulary)["cast_on"], said(check_text(text, vocabulary))) == (142, [])
    assert said(check_text(text.replace("142", "141"), vocabulary)) == [("stated-count-wrong", "error", 1)]


def test_a_marker_of_unknown_place_is_no_silence(vocabulary: Vocabulary) -> None:
    """Counts that cannot be followed are null, and a note says why."""
    answer = check_text("Row 1: K to 2 sts before marker, k2tog, sm, k to end.", vocabulary)
    assert (answer["multiple"], counts(answer)) == (None, [(None, None)])
    assert said(answer) == [("count-not-followed", "note", 1)]


def test_a_word_is_never_said_to_be_meant_for_itself(vocabulary: Vocabulary) -> None:
    """A word that is known in another place is no suggestion where it is not."""
    text = "Row 1: Knit into the front of every other st and purl the rest."
    finding = check_text(text, vocabulary)["findings"][0]
    assert (finding["rule"], "“into”" in finding["message"], "“into”" in finding["hint"]) == (
        "unknown-term",
        True,
        False,
    )
