"""Texts in several sizes: every size checked by itself, its faults at their own places, its corrections its own."""

from __future__ import annotations

from typing import Any

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from counterpane.craft.checking.corrections import MOST_FAULTS
from counterpane.craft.stitches import Vocabulary
from counterpane.library.texts.checks import check_text, corrected
from counterpane.library.texts.extracts import extract_text
from counterpane.seeding import load_vocabulary

# Invented patterns, and by hand the stitches after each row in each size; "=" stands for the cast-on.
SOUND: list[tuple[str, list[list[int]]]] = [
    ("Cast on 10 (14, 18) sts.\nRow 1: K10 (14, 18).\nRow 2: Purl.\n", [[10, 10], [14, 14], [18, 18]]),
    (
        "Sizes: preemie (newborn, toddler)\nCast on 15 (19, 23) sts.\n"
        "Row 1 (RS): K3 (4, 5), *p1, k1; rep from * to last 4 (5, 6) sts, p1, k3 (4, 5).\n"
        "Row 2: P3 (4, 5), *k1, p1; rep from * to last 4 (5, 6) sts, k1, p3 (4, 5). (15 (19, 23) sts)\n",
        [[15, 15], [19, 19], [23, 23]],
    ),
    (
        "Cast on 12 [16: 20] sts.\nRow 1: K1, [yo, k2] 5 [7: 9] times, k1. (17, 23, 29 sts)\nRow 2: Knit.\n",
        [[17, 17], [23, 23], [29, 29]],
    ),
    (
        "Cast on 9 (10, 11, 12) sts.\nRow 1: K4, k0 (1, 2, 3), k5.\n"
        "Row 2: Bind off 0 (1, 2, 3) sts, k to end. — 9 (9, 9, 9) sts.\n",
        [[9, 9], [10, 9], [11, 9], [12, 9]],
    ),
    (
        "Cast on 8 (12) sts.\nRow 1: *K2, p2; rep from * 1 (2) times more.\nRow 2: [P1, k1] 4 (6) times.\n",
        [[8, 8], [12, 12]],
    ),
    (
        "Cast on 6 (8, 10) sts.\nRow 1: Knit.\nRow 2: K1, yo, k to end.\nRep row 2 3 (5, 7) times more.\n"
        "Row 3: Knit. (10 (14, 18) sts)\n",
        [[6, 7, 10], [8, 9, 14], [10, 11, 18]],
    ),
    (
        "Cast on 20/24/28 sts.\nRow 1: K – (2, 4), p20 (22, 24).\n"
        "Row 2 (sizes 2 and 3 only): K2tog, k to end.\nRow 3: K.\n",
        [[20, 20], [24, 23, 23], [28, 27, 27]],
    ),
    (
        "CO 11 (13) 15 sts\nRow 1: K to last 2 (3) 4 sts, k2tog, k0 (1) 2.\nRow 2: P10 (12) 14.\n",
        [[10, 10], [12, 12], [14, 14]],
    ),
    (
        "Sizes: S, M and L\nCast on 12 (15, 18) sts.\nRow 1: *K1, k2tog; rep from * 3 (4, 5) times more. (8, 10, 12)\n"
        "For size L only: knit 1 row.\nRow 3: *K2tog; rep from * to end. (4 (5, 6) sts)\n",
        [[8, 4], [10, 5], [12, 12, 6]],
    ),
    (
        "Cast on 30 (36, 42)[48, 54] sts.\nRows 1–2 (2, 4)[4, 4]: Knit.\nRow 5: K3 (4, 5)[6, 7], k2tog, k to end.\n",
        [[30, 30, 29], [36, 36, 35], [42, 42, 42, 42, 41], [48, 48, 48, 48, 47], [54, 54, 54, 54, 53]],
    ),
    (
        "Cast on 16 (20, 24) sts.\nRow 1: *K2; rep from * to last 0 (2, 4) sts, k0 (2, 4).\nRow 2: P16 (20, 24).\n",
        [[16, 16], [20, 20], [24, 24]],
    ),
]


def errors(found: list[dict[str, Any]]) -> list[tuple[str, int, int]]:
    """Return the errors with their places."""
    return [(each["rule"], each["line"], each["column"]) for each in found if each["severity"] == "error"]


@pytest.mark.parametrize(("text", "counts"), SOUND, ids=range(len(SOUND)))
def test_a_sound_pattern_is_counted_in_every_size(text: str, counts: list[list[int]], vocabulary: Vocabulary) -> None:
    """The counts are those worked out by hand, and nothing is wrong."""
    sizes = check_text(text, vocabulary)["sizes"]
    assert [[row["after"] for row in size["rows"]] for size in sizes] == counts
    assert [errors(size["findings"]) for size in sizes] == [[]] * len(counts)


@pytest.mark.parametrize(("text", "counts"), SOUND, ids=range(len(SOUND)))
def test_the_top_level_is_the_first_size(text: str, counts: list[list[int]], vocabulary: Vocabulary) -> None:
    """Who knows nothing of sizes reads the first."""
    answer = check_text(text, vocabulary)
    first = {name: answer[name] for name in ("cast_on", "rows", "findings")}
    assert answer["sizes"][0] == first


@pytest.mark.parametrize(("text", "counts"), SOUND, ids=range(len(SOUND)))
def test_an_extract_has_the_counts_of_its_size(text: str, counts: list[list[int]], vocabulary: Vocabulary) -> None:
    """The text of one size alone checks as the size does, and is in one size."""
    for number in range(1, len(counts) + 1):
        alone = check_text(extract_text(text, number)["text"], vocabulary)
        assert alone["sizes"] is None
        assert [row["after"] for row in alone["rows"]] == counts[number - 1]


WRONG = SOUND[1][0].replace("P3 (4, 5)", "P3 (4, 6)")


def test_a_wrong_number_is_found_in_its_size_alone(vocabulary: Vocabulary) -> None:
    """The finding stands where the size's own row fails."""
    sizes = check_text(WRONG, vocabulary)["sizes"]
    assert [errors(size["findings"]) for size in sizes] == [[], [], [("rows-do-not-join", 4, 19)]]


def test_a_wrong_count_is_found_at_the_number_of_its_size(vocabulary: Vocabulary) -> None:
    """The column is that of the third number."""
    text = "Cast on 10 (14, 18) sts.\nRow 1: K10 (14, 18). (10 (14, 19) sts)\n"
    sizes = check_text(text, vocabulary)["sizes"]
    assert [errors(size["findings"]) for size in sizes] == [[], [], [("stated-count-wrong", 2, 31)]]


def test_a_correction_changes_one_size_alone(vocabulary: Vocabulary) -> None:
    """The numbers of the other sizes and every bracket stay."""
    text = "Cast on 10 (14, 18) sts.\nRow 1: K10 (14, 18). (10 (14, 19) sts)\n"
    assert corrected(text, vocabulary) == text.replace("19", "18")


def test_a_corrected_pattern_is_sound_in_all_sizes(vocabulary: Vocabulary) -> None:
    """What is offered has been checked in each."""
    better = corrected(WRONG, vocabulary)
    sizes = check_text(better, vocabulary)["sizes"]
    assert better != WRONG
    assert [errors(size["findings"]) for size in sizes] == [[], [], []]
    assert better.count("(4, ") == WRONG.count("(4, ")


def test_a_list_of_another_length_is_one_error_in_every_size(vocabulary: Vocabulary) -> None:
    """The row cannot be counted, and nothing else is said of it."""
    text = "Cast on 12 (16, 20) sts.\nRow 1: K4 (5), p8 (12, 16).\nRow 2: Purl.\n"
    sizes = check_text(text, vocabulary)["sizes"]
    assert [errors(size["findings"]) for size in sizes] == [[("sizes-differ-in-number", 2, 9)]] * 3
    assert [size["rows"][0]["after"] for size in sizes] == [None] * 3


# -- properties

EDGES = st.integers(0, 5)
REPEATS = st.integers(1, 6)
SIZE = st.tuples(EDGES, REPEATS, st.integers(-1, 1))


def pattern(edge: str, repeats: str, cast_on: str, rest: str) -> str:
    """Write a pattern with these numbers in it."""
    return (
        f"Cast on {cast_on} sts.\nRow 1 (RS): K{edge}, *k2, p2; rep from * to last {rest} sts, k2, k{edge}.\n"
        f"Row 2: P{edge}, [p2, k2] {repeats} times, p to end. ({cast_on} sts)\nRow 3: K1, ssk, k to end.\n"
    )


def numbers(size: tuple[int, int, int]) -> tuple[int, int, int, int]:
    """Return the numbers of a size: its edge, its repeats, a cast-on that may be wrong, and the stitches kept."""
    edge, repeats, wrong = size
    return edge, repeats, 2 * edge + 4 * repeats + 2 + wrong, edge + 2


def bracketed(of: tuple[int, ...]) -> str:
    """Print one number a size."""
    return f"{of[0]} ({', '.join(map(str, of[1:]))})"


@settings(max_examples=40, deadline=None)
@given(st.lists(SIZE, min_size=2, max_size=5))
def test_a_text_of_many_sizes_answers_as_its_texts_of_one(sizes: list[tuple[int, int, int]]) -> None:
    """Texts of one size put together with brackets have in each size the rows and errors that they had alone."""
    vocabulary = load_vocabulary()
    columns = [numbers(size) for size in sizes]
    together = check_text(pattern(*map(bracketed, zip(*columns, strict=True))), vocabulary)["sizes"]
    for size, column in zip(together, columns, strict=True):
        alone = check_text(pattern(*map(str, column)), vocabulary)
        told = [(row["label"], row["before"], row["after"]) for row in size["rows"]]
        assert told == [(row["label"], row["before"], row["after"]) for row in alone["rows"]]
        assert [rule for rule, *_ in errors(size["findings"])] == [rule for rule, *_ in errors(alone["findings"])]


@settings(max_examples=40, deadline=None)
@given(SIZE)
def test_a_text_in_one_size_is_its_own_first_size(size: tuple[int, int, int]) -> None:
    """No number in it is taken for a list, and its extract is the text."""
    text = pattern(*map(str, numbers(size)))
    assert check_text(text, load_vocabulary())["sizes"] is None
    assert extract_text(text, 1)["text"] == text


def test_words_that_end_in_numbers_of_other_sizes_are_not_gone_on_with(vocabulary: Vocabulary) -> None:
    """The end of the repeat would stand before the numbers of the other sizes: nothing is offered."""
    text = "Cast on 12 (14, 16) sts.\nRow 1: *K2, p2, k2 (3, 4).\nRow 2: Knit.\n"
    findings = check_text(text, vocabulary)["findings"]
    assert {each["rule"]: each["corrections"] for each in findings if each["line"] == 2} == {"repeat-without-end": []}


def test_a_text_full_of_faults_is_corrected_in_no_size(vocabulary: Vocabulary) -> None:
    """With one row unreadable the wrong count has its correction; with many it is no pattern with a slip in it."""
    begun = "Cast on 10 (14) sts.\nRow 1: K9 (14).\n"
    few, many = (
        check_text(begun + "".join(f"Row {row}: Zork.\n" for row in range(2, 2 + rows)), vocabulary)
        for rows in (1, MOST_FAULTS + 1)
    )
    first, *_ = few["sizes"]
    assert any(finding["corrections"] for finding in first["findings"])
    assert not any(finding["corrections"] for size in many["sizes"] for finding in size["findings"])
