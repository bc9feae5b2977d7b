"""What the rules of reading, counting and wording say where texts are unusual."""

from __future__ import annotations

import pytest

from counterpane.craft.checking import examine, examine_sizes
from counterpane.craft.checking.wording import multiple
from counterpane.craft.counts import Progression
from counterpane.craft.findings import Finding
from counterpane.craft.rows.words import in_normal_form
from counterpane.craft.rules import judge_text
from counterpane.craft.stitches import Vocabulary


def found_by(rule: str, text: str, vocabulary: Vocabulary) -> Finding:
    """Return the first finding of a rule."""
    return next(found for found in judge_text(examine(text, vocabulary)) if found.rule == rule)


def test_a_word_that_the_text_explains_asks_for_its_stitches(vocabulary: Vocabulary) -> None:
    """The list of abbreviations leads to the chart, and not to what the stitch is worked of."""
    text = "Abbreviations: bob: as the chart shows\n\nCast on 12 sts.\nRow 1: K2, bob, k9."
    found = found_by("unknown-term", text, vocabulary)
    assert found.message == "“bob” is explained in the text, in words that cannot be counted here."
    assert found.hint == "Write its stitches in the row, in brackets."


@pytest.mark.parametrize(
    ("promised", "message", "corrections"),
    [
        (
            "Multiple of 4 sts plus 2.",
            "The text promises a multiple of 4 plus 2, but its rows take a multiple of 5 stitches, at least 5.",
            ("Multiple of 5 sts.",),
        ),
        (
            "An even number of sts.",
            "The text promises a multiple of 2, but its rows take a multiple of 5 stitches, at least 5.",
            (),
        ),
    ],
)
def test_a_promise_is_put_right_where_it_is_printed_in_numbers(
    promised: str, message: str, corrections: tuple[str, ...], vocabulary: Vocabulary
) -> None:
    """The words "plus 2" go with the wrong multiple; an even number is a word in which no other number can be put."""
    text = f"{promised}\nCast on 10 sts.\nRow 1: *K3, p2; rep from * to end."
    found = found_by("stated-multiple-wrong", text, vocabulary)
    assert (found.message, found.corrections) == (message, corrections)


def test_counts_are_said_as_a_multiple_or_as_one_or_as_any() -> None:
    """A progression of one count, of every count, and of every fourth."""
    said = [multiple(counts) for counts in (Progression.only(24), Progression(1, 0, 1), Progression(4, 1, 9))]
    assert said == [
        "24 stitches and no other count",
        "any count from 1 stitch on",
        "a multiple of 4 stitches plus 1, at least 9",
    ]


def test_rows_worked_oftener_than_there_are_stitches_stop_at_the_last_that_can_be(vocabulary: Vocabulary) -> None:
    """From 500 stitches row 1 leaves 499, and again 498 times one less: the 499th pass finds one stitch for k2tog."""
    text = "Cast on 500 sts.\nRow 1: K2tog, k to end.\nRep row 1 600 times more.\nRow 2: Knit."
    found = found_by("row-runs-short", text, vocabulary)
    assert found.message.startswith("Row 1, worked again for the 499th time at line 3, begins with 1 stitch")


def test_a_row_is_stuck_beside_its_marker_before_the_number_to_stop_at(vocabulary: Vocabulary) -> None:
    """Each working takes a stitch from the four beside the marker, so three are never left of twenty."""
    text = (
        "Cast on 20 sts.\nRow 1: K4, pm, k to end.\nRow 2: K to m, sm, k2tog, k to end.\nRep row 2 until 3 sts remain."
    )
    assert found_by("row-runs-short", text, vocabulary).severity == "error"


def test_the_last_row_of_a_line_that_names_others_is_unclear(vocabulary: Vocabulary) -> None:
    """Rows 3 and 4 stand on one line and are knitted and purled in turn; which of them is "the last"?"""
    text = "Cast on 4 sts.\nRow 1: Knit.\nRow 2: Purl.\nRows 3-4: As rows 1 and 2.\nRep the last row."
    found = found_by("repeat-extent-unclear", text, vocabulary)
    assert found.message == "“The last row” stands behind a line that gives several rows."


def test_a_row_printed_over_two_lines_is_not_printed_anew(vocabulary: Vocabulary) -> None:
    """Its count is missed all the same; where a count goes is left to whoever prints it."""
    text = (
        "Cast on 12 sts.\nRow 1: K2tog, k to end. (11 sts)\nRow 2: K2tog, k to\nend.\nRow 3: K2tog, k to end. (9 sts)"
    )
    assert found_by("count-not-printed", text, vocabulary).corrections == ()


def test_names_that_are_each_other_s_across_the_sea_are_a_note(vocabulary: Vocabulary) -> None:
    """What one trade calls seed stitch the other calls moss stitch, and here both stand in one text."""
    found = found_by("terms-mixed", "Cast on 12 sts.\nRow 1: Seed stitch.\nRow 2: Moss stitch.", vocabulary)
    assert found.severity == "note"
    assert found.message.endswith("each is the other's name in US or in UK terms.")


def test_the_only_row_that_changes_the_count_is_not_named_where_it_says_so(vocabulary: Vocabulary) -> None:
    """Nineteen are printed behind row 2, so that its decrease is meant."""
    row = "Cast on 20 sts.\nRow 1: K4, pm, k to end.\nRow 2: K to m, sm, k2tog, k to end."
    found = [
        judge_text(examine(f"{row}{count}\nRep row 2 until 3 sts remain.", vocabulary)) for count in ("", " (19 sts)")
    ]
    named = [any(each.rule == "row-upsets-later-rows" for each in findings) for findings in found]
    assert named == [True, False]


def test_a_list_without_a_repeat_is_put_right_as_the_whole_repeat_of_a_stated_multiple(vocabulary: Vocabulary) -> None:
    """Two knit and two purl are the four of which the text takes a multiple, once the bracket is closed or gone."""
    text = "Multiple of 4 sts.\nCast on 12 sts.\nRow 1: K2, p2)."
    assert found_by("bracket-not-closed", text, vocabulary).corrections == ("Row 1: K2, (p2).", "Row 1: (K2, p2).")


@pytest.mark.parametrize(("cast_on", "asked"), [("8", True), ("8 (10 12)", False)])
def test_one_count_is_not_asked_for_where_there_may_be_several_sizes(
    cast_on: str, asked: bool, vocabulary: Vocabulary
) -> None:
    """Numbers in brackets without commas are not read as sizes, and a count for one of them would be wrong for two."""
    text = f"Cast on {cast_on} sts.\nRow 1: K1, yo, k to end. (9 sts)\nRow 2: Purl.\nRow 3: K1, yo, k to end.\n"
    found = {finding.rule for finding in judge_text(examine(text, vocabulary))}
    assert ("count-not-printed" in found) is asked


@pytest.mark.parametrize(
    ("line", "message", "column"),
    [
        ("Knit 0 rows.", "“Knit 0 rows.” asks for no rows.", 1),
        ("Next 0 rows: Knit.", "“Next 0 rows: Knit.” asks for no rows.", 1),
        ("Bind off.\nCast on 0 sts.", "Nothing is cast on here.", 9),
    ],
)
def test_an_order_for_nothing_is_named_where_it_stands(
    line: str, message: str, column: int, vocabulary: Vocabulary
) -> None:
    """Neither an order for no rows nor a further piece of no stitches is passed over, and the rows before it stay."""
    text = f"Cast on 20 sts.\nRow 1: Knit.\n{line}"
    found = found_by("asks-for-nothing", text, vocabulary)
    assert (found.message, found.line, found.column) == (message, len(text.splitlines()), column)
    assert [row.label for row in examine(text, vocabulary).rows] == ["1"]


def test_rows_over_any_number_begin_with_some(vocabulary: Vocabulary) -> None:
    """A cast-on of none is a fault also where no row would run short of stitches; another asked for is followed."""
    text = "Cast on 0 sts.\nRow 1: Knit.\nRow 2: Purl."
    assert found_by("asks-for-nothing", text, vocabulary).line == 1
    assert [found.rule for found in judge_text(examine(text, vocabulary, 20))] == ["cast-on-differs"]


def test_what_is_not_worked_in_a_size_is_no_order_for_nothing(vocabulary: Vocabulary) -> None:
    """A zero in a list of sizes leaves the rows out of that size."""
    text = "Sizes: S (M)\nCast on 20 (24) sts.\nKnit 4 (0) rows.\nRow 1: Knit."
    sizes = examine_sizes(text, vocabulary)
    assert [len(size.rows) for size in sizes] == [5, 1]
    assert [judge_text(size) for size in sizes] == [(), ()]


@pytest.mark.parametrize(
    ("count", "column"),
    [("20.5 sts", 9), ("20½ sts", 9), ("20 1/2 stitches", 9), ("-20 sts", 9), ("loosely 20,5 sts", 17)],
)
def test_a_cast_on_of_part_of_a_stitch_is_not_rounded(count: str, column: int, vocabulary: Vocabulary) -> None:
    """A point, a fraction and a minus are named where they stand, and no count is taken of them."""
    examined = examine(f"Cast on {count}.\nRow 1: Knit.", vocabulary)
    assert [(found.rule, found.column) for found in judge_text(examined)] == [("count-not-whole", column)]
    assert examined.instructions.cast_on is None


def test_a_range_of_counts_is_no_part_of_a_stitch(vocabulary: Vocabulary) -> None:
    """A count with a dash behind it, or with thousands, is a whole number."""
    assert judge_text(examine("Cast on 20 - 24 sts.\nRow 1: Knit.", vocabulary)) == ()
    assert judge_text(examine("Cast on 1,200 sts.\nRow 1: Knit.", vocabulary)) == ()


@pytest.mark.parametrize(
    ("line", "label"),
    [
        ("Ridge 2: K2, yo, k18.", "Ridge 2"),
        ("Line 2 - K2, yo, k18", "Line 2"),
        ("Block #2 (RS): Purl.", "Block #2 (RS)"),
        ("- Step 2: K2, yo, k18.", "Step 2"),
    ],
)
def test_stitches_behind_a_label_that_names_no_row_are_told(line: str, label: str, vocabulary: Vocabulary) -> None:
    """They are not followed, which nobody would see from the counts below."""
    examined = examine(f"Cast on 20 sts.\nRow 1: Knit.\n{line}\nRow 3: Purl.\nBind off.", vocabulary)
    told = [found for found in judge_text(examined) if found.rule == "label-not-known"]
    assert [(found.line, found.message.startswith(f"“{label}” names no row")) for found in told] == [(3, True)]


@pytest.mark.parametrize(
    "line",
    ["Note 2: knit loosely, since cotton does not give.", "Size 2: 40 cm", "Photo 3: k2tog is worked from the left."],
)
def test_a_sentence_behind_a_word_and_number_is_no_row(line: str, vocabulary: Vocabulary) -> None:
    """It holds no list of stitches."""
    examined = examine(f"Cast on 20 sts.\nRow 1: Knit.\n{line}\nRow 2: Purl.\nBind off.", vocabulary)
    assert [found for found in judge_text(examined) if found.rule == "label-not-known"] == []


def test_a_title_with_a_number_is_no_label(vocabulary: Vocabulary) -> None:
    """It names the fabric with stitches and a comma, as a row does."""
    examined = examine("Pattern 5: K2, P2 Rib\n\nCast on 20 sts.\nRow 1: *K2, p2; rep from * to end.", vocabulary)
    assert examined.instructions.title == "Pattern 5: K2, P2 Rib"
    assert examined.instructions.faults == ()


def test_rows_are_repeated_in_letters_of_another_order(vocabulary: Vocabulary) -> None:
    """Some print "rpt" for "rep"; a word that only holds these letters is none."""
    with_rpt = "Cast on 20 sts.\nRow 1: *K2, p2; rpt from * to end.\nRow 2: Purl.\nRpt rows 1-2 until it is square."
    read = examine(with_rpt, vocabulary)
    assert read.instructions.steps == examine(with_rpt.replace("pt", "ep"), vocabulary).instructions.steps
    assert read.instructions.faults == ()
    assert in_normal_form(["An excerpt: rpt."], {})[0].text == "an excerpt: rep."


def test_a_row_that_begins_as_a_remark_does_gets_an_answer(vocabulary: Vocabulary) -> None:
    """It is taken as one repeat, and no star can be put before words that a remark would swallow."""
    found = found_by("repeat-assumed", "Rnd 12 accept row-runs-short: k2tog rep", vocabulary)
    assert (found.line, found.corrections) == (1, ())
