"""The cause of a misfit: the least change of the author's own words that puts the whole text right."""

from __future__ import annotations

from typing import Any

import pytest

from counterpane.craft.stitches import Vocabulary
from counterpane.library.texts.checks import check_text, corrected

RIB = "Row 1: *K2, p2; rep from * to end.\nRow 2: *K2, p2; rep from * to end.\n"
LACE = (
    "Cast on 39 sts.\nRow 1: *K1, yo, k4, k3tog, k4, yo, k1; rep from * to end.\nRow 2: Purl.\n"
    "Row 3: *K1, yo, {}, k3tog, k4, yo, k1; rep from * to end.\nRow 4: Purl.\n"
    "Row 5: *K1, yo, k4, k3tog, k4, yo, k1; rep from * to end.\n"
)


def named(text: str, vocabulary: Vocabulary) -> list[tuple[str, str, int]]:
    """Return rule, severity and line of each finding."""
    return [(f["rule"], f["severity"], f["line"]) for f in check_text(text, vocabulary)["findings"]]


def fixes(text: str, line: int, vocabulary: Vocabulary) -> list[str]:
    """Return the corrections of the first finding on a line."""
    findings: list[dict[str, Any]] = check_text(text, vocabulary)["findings"]
    return next(f["corrections"] for f in findings if f["line"] == line)


def test_a_cast_on_that_all_rows_refuse_is_the_cause(vocabulary: Vocabulary) -> None:
    """The knitter is stuck in row 1; the cast-on is named with the counts below and above that would do."""
    text = "Cast on 21 sts.\n" + RIB
    assert named(text, vocabulary) == [("stated-count-wrong", "warning", 1), ("repeat-does-not-fit", "error", 2)]
    assert fixes(text, 1, vocabulary) == ["Cast on 20 sts.", "Cast on 24 sts."]


def test_printed_counts_choose_the_cast_on(vocabulary: Vocabulary) -> None:
    """Where the rows print 24, the cast-on of 21 becomes 24 and not 20."""
    text = "Cast on 21 sts.\n" + RIB.replace("end.", "end. (24 sts)")
    assert fixes(text, 1, vocabulary) == ["Cast on 24 sts."]


def test_one_printed_count_among_true_ones_is_corrected_alone(vocabulary: Vocabulary) -> None:
    """The row is right, as the counts around it show."""
    row = "Row {}: K1, yo, k to last st, yo, k1. ({} sts)\n"
    text = "Cast on 20 sts.\n" + row.format(1, 22) + row.format(2, 25) + row.format(3, 26)
    assert named(text, vocabulary) == [("stated-count-wrong", "error", 3)]
    assert corrected(text, vocabulary) == text.replace("25", "24")


def test_a_later_count_shows_which_row_is_wrong(vocabulary: Vocabulary) -> None:
    """Row 3 prints the count that row 2 has upset by a yarn-over too many."""
    text = (
        "Cast on 20 sts.\nRow 1: K1, yo, k2tog, k to end.\nRow 2: K1, yo, yo, k2tog, k to end.\n"
        "Row 3: Purl. (20 sts)\nRow 4: *K2, p2; rep from * to end. (20 sts)"
    )
    assert ("row-upsets-later-rows", "warning", 3) in named(text, vocabulary)
    assert fixes(text, 3, vocabulary)[0] == "Row 2: K1, yo, k2tog, k to end."


def test_a_stitch_made_too_many_shows_where_the_rows_are_repeated(vocabulary: Vocabulary) -> None:
    """A “make 1” too many is left out in the book's own words, so that the rows return to their start."""
    text = (
        "Cast on 18 stitches.\n1st row: Knit 2, *make 1, knit 2 together, knit 2, make 1; repeat from * to the last "
        "4 stitches, knit 4.\n2nd row: Purl.\nRepeat these 2 rows."
    )
    assert named(text, vocabulary)[0] == ("row-upsets-later-rows", "warning", 2)
    assert corrected(text, vocabulary) == text.replace("knit 2, make 1; repeat", "knit 2; repeat")


def test_rows_that_can_be_worked_once_more_get_a_note(vocabulary: Vocabulary) -> None:
    """44 stitches become 66 and 99, of which no pair can be made; a second pass fits, so that nothing is wrong yet."""
    text = "Cast on 44 sts.\nRow 1: *K2, yo; rep from * to end.\nRow 2: Purl.\nRep rows 1-2."
    assert named(text, vocabulary) == [("count-drifts", "note", 4)]


@pytest.mark.parametrize(
    ("wrong", "right"),
    [
        ("sl 1, k2tog, yo", "sl 1, k2tog, psso, yo"),
        ("sl 1, k1, psso, yo", "sl 1, k2tog, psso, yo"),
        ("k2tog, yo", "k3tog, yo"),
    ],
)
def test_a_decrease_is_corrected_in_the_words_of_the_row(wrong: str, right: str, vocabulary: Vocabulary) -> None:
    """A passing-over left out is put in; a decrease is exchanged for its neighbour."""
    text = "Cast on 21 sts.\nRow 1: K1, *yo, {}, k1; rep from * to end. (21 sts)\nRow 2: Purl. (21 sts)\n"
    assert corrected(text.format(wrong), vocabulary) == text.format(right)


def test_a_star_one_stitch_too_late_is_moved(vocabulary: Vocabulary) -> None:
    """The repeat of 5 becomes the 6 of the other rows."""
    rows = "Row 2: *K3, p3; rep from * to last 2 sts, p2.\nRow 3: K2, *p3, k3; rep from * to end.\n"
    text = "Cast on 26 sts.\nRow 1: K2, p1, *k2, p3; rep from * to end.\n" + rows
    assert fixes(text, 2, vocabulary)[0] == "Row 1: K2, *p1, k2, p3; rep from * to end."


def test_a_row_that_names_another_may_name_the_wrong_one(vocabulary: Vocabulary) -> None:
    """Row 6 repeats row 4, whose repeat of 8 no longer fits; one that fits is offered, with its ordinal."""
    text = (
        "Cast on 20 sts.\nRow 1: *K2, p2; rep from * to end.\nRow 2: Purl.\nRow 3: *K1, yo; rep from * to end.\n"
        "Row 4: *K3, p5; rep from * to end.\nRow 5: *K2tog; rep from * to end.\nRow 6: As the 4th row.\n"
    )
    assert fixes(text, 5, vocabulary)[0] == "Row 6: As the 2nd row."


@pytest.mark.parametrize("printed", ["(multiple of 3 sts plus 2)", "Multiple of 7 sts plus 2.", "(multiple of 6 sts)"])
def test_a_stated_multiple_is_put_right_in_its_own_words(printed: str, vocabulary: Vocabulary) -> None:
    """A divisor, a neighbour, and edge stitches left out: the statement is the odd one out."""
    rows = "Cast on 20 sts.\nRow 1: K2, *p3, k3; rep from * to end.\nRow 2: P2, *k3, p3; rep from * to end.\n"
    better = corrected(f"{printed}\n{rows}", vocabulary)
    assert better.partition("\n")[2] == rows and "6 sts plus 2" in better
    assert named(better, vocabulary) == []


def test_the_row_that_is_made_like_another_comes_first(vocabulary: Vocabulary) -> None:
    """Of all ways to a repeat of 13, the one that gives the row its neighbours have is the likeliest."""
    assert fixes(LACE.format("k3"), 4, vocabulary)[0] == LACE.format("k4").splitlines()[3]


def test_what_is_borne_out_by_a_count_is_not_suspected(vocabulary: Vocabulary) -> None:
    """Row 1 leaves the count it prints, so only row 2 is offered for change."""
    text = "Cast on 20 sts.\nRow 1: K1, yo, k2tog, k17. (20 sts)\nRow 2: K1, yo, k2tog, k18. (20 sts)\n"
    assert {finding["line"] for finding in check_text(text, vocabulary)["findings"]} == {3}
    assert fixes(text, 3, vocabulary)[0].startswith("Row 2: K1, yo, k2tog, k17.")


@pytest.mark.parametrize("end", ["\n", "\r\n"])
@pytest.mark.parametrize("mark", ["", "\ufeff"])
def test_a_correction_changes_nothing_but_its_words(end: str, mark: str, vocabulary: Vocabulary) -> None:
    """Line ends, BOM, tabs, blanks, bullets and Markdown stay as they are."""
    lines = [
        "# A  square ",
        "",
        "Cast on 11 sts.  ",
        "\t- **Row 1** (RS):\tK8,  {}. \t",
        "* Row 2: purl",
        "",
        "Enjoy – ½!",
    ]
    text = mark + end.join(lines)
    assert corrected(text.format("p4"), vocabulary) == text.format("p3")


def test_a_correction_of_a_wrapped_row_keeps_the_wrap(vocabulary: Vocabulary) -> None:
    """The number on the second line is changed, and the line end stays."""
    text = (
        "Cast on 26 sts.\nRow 1: K2, *p3, k3; rep from *\n    to last {} sts, k6.\nRow 2: *K1, p1; rep from * to end.\n"
    )
    assert corrected(text.format(5), vocabulary) == text.format(6)


@pytest.mark.parametrize(
    ("row", "better"),
    [
        ("K1, skq, k1.", "K1, skp, k1."),
        ("K1, K2tgo, k1.", "K1, K2tog, k1."),
        ("[k1, p1 twice.", "[k1, p1] twice."),
        ("K2, p1), k1.", "K2, (p1), k1."),
        ("K2, p2; rep from * to end.", "*K2, p2; rep from * to end."),
        ("*K1, p1.", "*K1, p1; rep from * to end."),
        ("[K1, p1] twice; rep from * to end.", "*[K1, p1] twice; rep from * to end."),
        ("*K1, p1; rep from to end.", "*K1, p1; rep from * to end."),
    ],
)
def test_a_row_that_cannot_be_read_is_corrected_where_it_then_fits(
    row: str, better: str, vocabulary: Vocabulary
) -> None:
    """A word is respelt, a partner put in, and the row counted with the rest."""
    text = "Cast on 4 sts.\nRow 1: {}\n"
    assert corrected(text.format(row), vocabulary) == text.format(better)


@pytest.mark.parametrize(
    ("text", "better"),
    [
        ("Cast on 9 sts.\nRow 1: *K1, p1; rep from * 4 times, k1.", "Row 1: *K1, p1; rep from * 3 times more, k1."),
        ("Cast on 11 sts.\nRow 1: *K1, p1; rep from * 4 times, k1.", "Row 1: *K1, p1; rep from * 4 times more, k1."),
        ("Cast on 5 sts.\nRow 1: K1, Inc, k3. (6 sts)", "Row 1: K1, Kfb, k3. (6 sts)"),
        ("Cast on 5 sts.\nRow 1: K1, inc, k4. (6 sts)", "Row 1: K1, m1, k4. (6 sts)"),
        ("Cast on 8 sts.\nRow 1: K2, p2, repeat.", "Row 1: *K2, p2; rep from * to end."),
        ("(multiple of 4 sts)\nRow 1: K2, p2.", "Row 1: *K2, p2; rep from * to end."),
    ],
)
def test_a_doubt_that_is_decided_can_be_printed_without_it(text: str, better: str, vocabulary: Vocabulary) -> None:
    """The clearer line says what was read, and its text has no finding."""
    line = text.count("\n") + 1
    assert fixes(text, line, vocabulary) == [better]
    assert named(text.replace(text.splitlines()[-1], better), vocabulary) == []


def test_a_row_that_is_not_there_may_be_its_neighbour(vocabulary: Vocabulary) -> None:
    """A repeat line of rows 1-3 where there are two becomes one of rows 1-2, and never one of a row with itself."""
    assert fixes("Row 1: Knit.\nRow 2: Purl.\nRep rows 1-3.", 3, vocabulary) == ["Rep rows 1-2."]


def test_a_correction_of_a_text_in_sizes_suits_all_of_them(vocabulary: Vocabulary) -> None:
    """The row without a list is corrected for every size, and no number of a list is touched."""
    text = "Cast on 12 (16, 24) sts.\nRow 1: *K2, p2; rep from * to end.\nRow 2: *K2, p3; rep from * to end.\n"
    answer = check_text(text, vocabulary)
    offered = [f["corrections"] for size in answer["sizes"] for f in size["findings"] if f["severity"] == "error"]
    assert all(each[0] == "Row 2: *K2, p2; rep from * to end." for each in offered) and len(offered) == 3
    assert corrected(text, vocabulary) == text.replace("p3", "p2")


def test_a_text_with_a_slip_costs_no_correction_beyond_its_bounds(vocabulary: Vocabulary) -> None:
    """Row 250 of 500 is corrected, though most of the text is never read again."""
    row = "Row {}: K2, *{}; rep from * to last 2 sts, k2.\n"
    rows = [row.format(n, "p3, k3" if n % 2 else "k3, p3") for n in range(1, 501)]
    text = "Cast on 100 sts.\n" + "".join(rows)
    wrong = text.replace(rows[249], row.format(250, "k3, p4"))
    assert corrected(wrong, vocabulary) == text


def test_each_piece_has_its_own_correction(vocabulary: Vocabulary) -> None:
    """Where two pieces are wrong, each row is corrected by itself, and the text by both."""
    piece = "{}\nCast on {} sts.\nRow 1: K8, p{{}}.\nRow 2: Knit.\n"
    text = piece.format("Front", 11) + "\n" + piece.format("Back", 12)
    assert fixes(text.format(4, 3), 3, vocabulary)[0] == "Row 1: K8, p3."
    assert fixes(text.format(4, 3), 8, vocabulary)[0] == "Row 1: K8, p4."
    assert corrected(text.format(4, 3), vocabulary) == text.format(3, 4)


def test_stitches_picked_up_that_all_rows_refuse_are_the_cause(vocabulary: Vocabulary) -> None:
    """As for the cast-on of the first piece: the statement is named, and the row where the knitter is stuck."""
    body = "Cast on 40 sts.\nRow 1: Knit.\nBind off.\nBorder\nPick up and knit {} sts along the edge.\n"
    text = body.format(41) + RIB
    assert named(text, vocabulary)[:2] == [("stated-count-wrong", "warning", 5), ("repeat-does-not-fit", "error", 6)]
    assert fixes(text, 5, vocabulary) == [f"Pick up and knit {n} sts along the edge." for n in (40, 44)]
    assert corrected(text, vocabulary) == body.format(40) + RIB


def test_one_row_is_likelier_wrong_than_the_stitches_picked_up(vocabulary: Vocabulary) -> None:
    """Other rows bear the count out, so it is not blamed."""
    text = "Cast on 40 sts.\nRow 1: Knit.\nBind off.\nPick up and knit 40 sts.\n" + RIB + "Row 3: K38, p1.\n"
    assert [finding[0] for finding in named(text, vocabulary)] == ["row-leaves-stitches"]
    assert "Row 3: K38, p2." in fixes(text, 7, vocabulary)


def test_a_row_that_others_take_over_is_corrected_for_all(vocabulary: Vocabulary) -> None:
    """The words of row 1 are wrong in rows 3 and 4 too, which say so, and right in all of them after the correction."""
    text = "Cast on 9 sts.\nRow 1: Sl 1, k1, p to last 2 sts, k{}.\nRow 2: Knit.\nRows 3-4: As row 1.\n"
    assert fixes(text.format(1), 2, vocabulary)[0] == "Row 1: Sl 1, k1, p to last 2 sts, k2."
    assert corrected(text.format(1), vocabulary) == text.format(2)


def test_a_promised_multiple_tells_which_of_two_repeats_is_wrong(vocabulary: Vocabulary) -> None:
    """Repeats of 8 and 7 meet at the cast-on by chance; the row that the promise speaks against is corrected."""
    text = "Cast on 58 sts (multiple of 8 + 2).\nRow 1: P2, *k2, p6; rep from * to end.\nRow 2: *K{}, p2; "
    text += "rep from * to last 2 sts, k2.\nRow 3: Purl.\n"
    assert named(text.format(5), vocabulary) == [("row-repeat-differs", "warning", 3)]
    assert "Row 2: *K6, p2; rep from * to last 2 sts, k2." in fixes(text.format(5), 3, vocabulary)


def test_several_faults_of_a_row_are_corrected_together(vocabulary: Vocabulary) -> None:
    """Two words nearly spelt are corrected at once; a row with a word that nobody can guess is left as it is."""
    text = "Cast on 8 sts.\nRow 1: K1, {}, yo, {}, k1, yo, k2.\nRow 2: Purl.\n"
    assert fixes(text.format("skq", "k2tgo"), 2, vocabulary)[0] == "Row 1: K1, skp, yo, k2tog, k1, yo, k2."
    assert fixes(text.format("skq", "zzzzz"), 2, vocabulary) == []


def test_a_stated_multiple_that_a_corrected_row_bears_out_is_not_doubted(vocabulary: Vocabulary) -> None:
    """A yarn-over left out of row 2 gives a multiple of 16 with the rest; the row is named, and not the statement."""
    text = (
        "(multiple of 4 sts)\nCast on 8 sts.\nRow 1: *K2, p2; rep from * to end.\nRow 2: *K1, k2tog, k1; rep from * to "
        "end.\nRow 3: *K2, p2; rep from * to end.\nRow 4: *P2, k2; rep from * to end.\n"
    )
    assert named(text, vocabulary) == [("row-upsets-later-rows", "warning", 4), ("repeat-does-not-fit", "error", 5)]
    assert corrected(text, vocabulary) in (
        text.replace("k2tog, k1", "k2tog, yo, k1"),
        text.replace("k2tog, k1", "k2, k1"),
    )


def test_a_correction_that_makes_the_repeats_nest_is_offered_alone(vocabulary: Vocabulary) -> None:
    """A repeat of 9 among repeats of 8 is put right to 8 and not to 10, which would fit the count as well."""
    text = (
        "Cast on 129 sts.\nRow 1: K3, *yo, ssk, k2, k2tog, yo, k3; rep from * to last 6 sts, k6.\nRow 2: Purl.\n"
        "Row 3: K4, *yo, sl 1, k2tog, psso, yo, k5; rep from * to last 5 sts, k5."
    )
    offered = fixes(text, 2, vocabulary)
    assert "Row 1: K3, *yo, ssk, k1, k2tog, yo, k3; rep from * to last 6 sts, k6." in offered
    assert not any(wide in row for row in offered for wide in ("k3, k2tog", "yo, k4;"))


def test_the_one_row_that_changes_the_count_is_named_where_no_small_change_corrects(vocabulary: Vocabulary) -> None:
    """A yarn-over left out of one row shows when the rows are worked again; that row is pointed at."""
    text = "Cast on 28 sts.\nRow 1: K2, *k4, yo, sk2p, k3; rep from * to last 6 sts, k6.\nRow 2: Purl.\n"
    text += "Row 3: K2, *k4, yo, sk2p, yo, k3; rep from * to last 6 sts, k6.\nRow 4: Purl.\nRep rows 1-4 3 times more."
    assert ("row-upsets-later-rows", "warning", 2) in named(text, vocabulary)


def test_rows_that_keep_their_count_are_tried_last(vocabulary: Vocabulary) -> None:
    """Of many rows the one that a knitter sticks in lacks a yarn-over; those before it gave no trouble."""
    lace = "K{}, *k1, yo, sl 1, k2tog, psso, yo, k2; rep from * to last {} sts, k{}."
    rows = [lace.format(10 - at, at, at) for at in (6, 5, 4, 7, 3, 8, 2, 6, 5)]
    rows += [rows[2].replace("k1, yo, sl", "k1, sl"), rows[0]]
    text = "Cast on 106 sts.\n" + "\n".join(f"Row {at}: {row}" for at, row in enumerate(rows, start=1))
    assert f"Row 10: {rows[2]}" in fixes(text, 11, vocabulary)
