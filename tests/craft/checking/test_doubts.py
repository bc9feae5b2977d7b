"""Words with two readings are settled by what is printed, and by nothing else."""

from __future__ import annotations

import pytest

from counterpane.craft.checking.rewordings import decided
from counterpane.craft.checking.rewriting import stretch
from counterpane.craft.stitches import Vocabulary
from counterpane.library.texts.checks import check_text


def rules(text: str, vocabulary: Vocabulary) -> list[tuple[str, str]]:
    """Return rule and severity of each finding."""
    return [(finding["rule"], finding["severity"]) for finding in check_text(text, vocabulary)["findings"]]


@pytest.mark.parametrize("cast_on", [9, 11])
def test_a_plain_number_of_times_is_settled_by_the_cast_on(cast_on: int, vocabulary: Vocabulary) -> None:
    """Five times in all takes 11, four times takes 9; both are read, and both earn the warning."""
    text = f"Cast on {cast_on} sts.\nRow 1: *K1, p1; rep from * 4 times, k1."
    assert check_text(text, vocabulary)["fixed"] == cast_on
    assert rules(text, vocabulary) == [("ambiguous-term", "warning")]


def test_a_plain_number_of_times_is_one_more_where_nothing_decides(vocabulary: Vocabulary) -> None:
    """Without a cast-on or a count, the repeat is worked once and then n times more."""
    assert check_text("Row 1: *K1, p1; rep from * 4 times, k1.", vocabulary)["fixed"] == 11


def test_a_plain_number_of_times_is_settled_by_the_rows_before(vocabulary: Vocabulary) -> None:
    """A fixed row before leaves the count that decides."""
    text = "Row 1: K9.\nRow 2: *K1, p1; rep from * 4 times, k1."
    assert check_text(text, vocabulary)["fixed"] == 9


def test_rows_alike_are_each_settled_by_what_is_on_the_needle(vocabulary: Vocabulary) -> None:
    """Ten stitches take the repeat five times, the eight that a row leaves of them four times."""
    row = "*K2; rep from * 4 times."
    text = f"Cast on 10 sts.\nRow 1: {row}\nRow 2: {row}\nRow 3: K2tog, k6, k2tog.\nRow 4: {row}\nRow 5: {row}"
    counts = [(each["before"], each["after"]) for each in check_text(text, vocabulary)["rows"]]
    assert counts == [(10, 10), (10, 10), (10, 8), (8, 8), (8, 8)]


def test_times_more_is_not_ambiguous(vocabulary: Vocabulary) -> None:
    """The words n times more mean n + 1 in all and earn no finding."""
    text = "Cast on 11 sts.\nRow 1: *K1, p1; rep from * 4 times more, k1."
    assert rules(text, vocabulary) == []


@pytest.mark.parametrize(("rest", "printed"), [("k11", 12), ("k4, yo, k2tog, k5", 12)])
def test_a_bind_off_leaves_a_stitch_that_is_not_counted(rest: str, printed: int, vocabulary: Vocabulary) -> None:
    """Binding off 5 of 17 uses 6 and leaves 1; the next number does not count it."""
    text = f"Cast on 17 sts.\nRow 1: Bind off 5 sts, {rest}. ({printed} sts)"
    assert rules(text, vocabulary) == []


def test_a_printed_count_can_count_the_stitch_of_a_bind_off(vocabulary: Vocabulary) -> None:
    """Where only counting it fits the printed count, the next number counts it."""
    text = "Cast on 17 sts.\nRow 1: Bind off 5 sts, k12. (12 sts)"
    assert rules(text, vocabulary) == []
    assert rules(text.replace(" (12 sts)", ""), vocabulary) == [("row-runs-short", "error")]


@pytest.mark.parametrize("rest", ["k3", "k4"])
def test_a_vague_increase_is_settled_by_the_count_after_it(rest: str, vocabulary: Vocabulary) -> None:
    """Into a stitch or between two: 5 to 6 with three stitches left or with four."""
    assert rules(f"Cast on 5 sts.\nRow 1: K1, inc, {rest}. (6 sts)", vocabulary) == [("ambiguous-term", "warning")]


def test_a_vague_increase_that_nothing_settles_is_not_counted(vocabulary: Vocabulary) -> None:
    """Both readings fit, so the row has no count and the finding is an error."""
    answer = check_text("Cast on 5 sts.\nRow 1: K1, inc, k to end.", vocabulary)
    assert [(row["before"], row["after"]) for row in answer["rows"]] == [(5, None)]
    assert [finding["severity"] for finding in answer["findings"]] == ["error"]


def test_a_vague_increase_in_a_group_is_settled_too(vocabulary: Vocabulary) -> None:
    """All vague stitches of a row are taken in the same meaning."""
    assert check_text("Cast on 4 sts.\nRow 1: [Inc, k1] twice. (6 sts)", vocabulary)["fixed"] == 4


def test_readings_of_the_same_count_are_a_warning(vocabulary: Vocabulary) -> None:
    """K1b is the stitch below or the back loop: one stitch either way."""
    assert rules("Cast on 3 sts.\nRow 1: K1b, k2.", vocabulary) == [("ambiguous-term", "warning")]


@pytest.mark.parametrize(
    ("stitches", "printed", "clear"),
    [
        (12, "twice", "twice more"),
        (8, "twice", "once more"),
        (8, "2 times", "once more"),
        (12, "3 times", "2 times more"),
        (16, "3 times", "3 times more"),
    ],
)
def test_a_repeat_that_the_count_decides_is_said_clearly(
    stitches: int, printed: str, clear: str, vocabulary: Vocabulary
) -> None:
    """Two more or two in all: the stitches on the needle tell which, and the row is offered in words that say it."""
    row = "Row 1: *K2, p2; rep from * {}. ({} sts)"
    text = f"Cast on {stitches} sts.\n{row.format(printed, stitches)}"
    (finding,) = check_text(text, vocabulary)["findings"]
    assert finding["corrections"] == [row.format(clear, stitches)]


def test_a_row_of_many_doubts_tells_each_and_settles_none(vocabulary: Vocabulary) -> None:
    """With others left in the row, none of its words makes it clear."""
    findings = check_text(f"Row 1: {'k1b, ' * 6}k1.", vocabulary)["findings"]
    doubts = [finding for finding in findings if finding["rule"] == "ambiguous-term"]
    assert len(doubts) == 6
    assert not any(finding["corrections"] for finding in doubts)


def test_a_row_of_a_handbook_with_a_repeat_of_its_own_is_taken_as_it_stands(vocabulary: Vocabulary) -> None:
    """Only a list without a repeat is taken as one: here the star says what is repeated."""
    text = "Cast on 39 sts.\nRow 1: * Over, narrow, knit 1; repeat from *.\nRow 2: Knit."
    answer = check_text(text, vocabulary)
    assert (answer["multiple"], rules(text, vocabulary)) == ({"of": 3, "plus": 0, "least": 3}, [])


@pytest.mark.parametrize(
    ("cast_on", "times", "clearer"),
    [
        (5, "once", ["once more"]),
        (3, "once", []),
        (5, "1 time", ["1 time more"]),
        (7, "twice", ["twice more"]),
        (5, "twice", ["once more"]),
    ],
)
def test_a_number_of_times_is_offered_with_more(
    cast_on: int, times: str, clearer: list[str], vocabulary: Vocabulary
) -> None:
    """Worked that often more, or that often in all, as the stitches show; once in all is no repeat to be worded."""
    text = "Cast on {} sts.\nRow 1: *K1, p1; rep from * {}, k1."
    (finding,) = check_text(text.format(cast_on, times), vocabulary)["findings"]
    row = text.splitlines()[1]
    assert finding["corrections"] == [row.format(said) for said in clearer]


@pytest.mark.parametrize(
    ("cast_on", "times", "clearer"),
    [
        (9, "thrice", "thrice more"),
        (7, "thrice", "2 times more"),
        (9, "3x", "3 times more"),
        (7, "3 x", "2 times more"),
        (9, "x 3", "3 times more"),
        (7, "x3", "2 times more"),
        (9, "three times", "three times more"),
    ],
)
def test_a_number_in_signs_is_offered_in_words(cast_on: int, times: str, clearer: str, vocabulary: Vocabulary) -> None:
    """No "more" can stand behind "3x": the correction writes it out."""
    row = "Row 1: *K1, p1; rep from * {}, k1."
    (finding,) = check_text(f"Cast on {cast_on} sts.\n{row.format(times)}", vocabulary)["findings"]
    assert finding["corrections"] == [row.format(clearer)]


def test_the_least_doubt_is_told_in_words(vocabulary: Vocabulary) -> None:
    """Once is no "1 times"."""
    (finding,) = check_text("Cast on 5 sts.\nRow 1: *K1, p1; rep from * once, k1.", vocabulary)["findings"]
    assert finding["message"] == "“times” can mean twice in all or once in all."


def test_only_the_number_behind_the_star_is_offered_with_more(vocabulary: Vocabulary) -> None:
    """What is worked twice before the repeat has its own number."""
    row = "Row 1: [K1, p1] twice, *k1, p1; rep from * {}."
    (finding,) = check_text(f"Cast on 12 sts.\n{row.format('3 times')}", vocabulary)["findings"]
    assert finding["corrections"] == [row.format("3 times more")]


def test_a_star_without_a_number_of_times_has_no_other_words() -> None:
    """A repeat to the end is worked as often as it fits."""
    row = "*K1, p1; rep from * to end."
    printed = stretch(row, 0, len(row))
    assert list(decided(printed, printed.words[0], ())) == []
