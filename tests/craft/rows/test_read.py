"""How a row's words are read: the forms of the trade, what is open to doubt, and what goes wrong."""

from __future__ import annotations

import re

import pytest
from hypothesis import given
from hypothesis import strategies as st

from counterpane.craft.rows.mistakes import likely_word
from counterpane.craft.rows.read import read_row
from counterpane.craft.rows.say import say_row
from counterpane.craft.rows.tree import Place
from counterpane.craft.rows.words import NUMBER_WORD, NUMBER_WORDS
from counterpane.craft.stitches import Vocabulary
from counterpane.library.texts.checks import check_text
from counterpane.seeding import load_vocabulary

SAME = [
    ("K2, *P3, K2; rep from * to end.", "k2, *p3, k2; rep from * to end"),
    ("K.", "knit"),
    ("Purl all sts.", "purl"),
    ("k across", "knit"),
    ("Knit to last 3 sts, sl 3 wyif.", "k to last 3 sts, sl 3 wyif"),
    ("[K3, p3] 4 times, k3", "[k3, p3] 4 times, k3"),
    ("(k1, p1) twice", "[k1, p1] twice"),
    ("k17, 17 sts; turn", "k17, turn"),
    ("k2, yo wrapping the yarn twice, k1", "k2, yo wrapped twice, k1"),
    (
        "slip 3 to cn, hold in back, k1, (k1, (k1, p1) twice) from cn",
        "sl next 3 sts to cn and hold at back, k1, k1 from cn, [k1 from cn, p1 from cn] twice",
    ),
    ("(k1, yo, k1) all in next st", "(k1, yo, k1) into next st"),
    ("(k1, p1) into next double yo", "(k1, p1) into next double yo"),
    ("[k2, p2] to last 2 sts, k2", "*k2, p2; rep from * to last 2 sts, k2"),
    ("(K1, P1) to last st, K1", "*k1, p1; rep from * to last st, k1"),
    ("[k1, p1] to last stitch, k1", "*k1, p1; rep from * to last st, k1"),
    ("(k1, p1) rep to last st, k1", "*k1, p1; rep from * to last st, k1"),
    ("[k1, p1] across", "*k1, p1; rep from * to end"),
    ("(k1, p1, k1) in last st", "(k1, p1, k1) into next st"),
    ("*k1, p1 to last st, k1", "*k1, p1; rep from * to last st, k1"),
    ("k to last st, k1", "k to last st, k1"),
    ("*k2, p2* to last 2 sts, k2", "*k2, p2; rep from * to last 2 sts, k2"),
    ("*k2, p2; repeat from * across", "*k2, p2; rep from * to end"),
    ("k1, *k2tog, yo; rep from *, end k2", "k1, *k2tog, yo; rep from *, end k2"),
    ("*k1, p1; rep from * 4 times more, k to end", "[k1, p1] 5 times, k to end"),
    ("*k1, p1; rep from * once more", "[k1, p1] twice"),
    ("*k1, (p1, (k1, p1) 2 times) 3 times; rep from * to end", "*k1, [p1, [k1, p1] twice] 3 times; rep from * to end"),
    ("knit 2 together, yarn over, slip 1 purlwise with yarn in front", "k2tog, yo, sl 1 pwise wyif"),
    ("sl 1, k2tog, psso", "sl 1, k2tog, psso"),
    ("sl 1, k1, pass slipped st over", "sl 1, k1, psso"),
    ("k2 tog tbl, p2 tog", "k2tog tbl, p2tog"),
    ("k1 tbl, p3 tbl", "k1 tbl, p3 tbl"),
    ("yo twice, yo 4 times", "yo twice, yo 4 times"),
    ("cast off 3 sts, k to end", "bind off 3 sts, k to end"),
    ("bind off in pattern", "bind off all sts in pattern"),
    ("cast on 6 sts, k3", "cast on 6 sts, k3"),
    ("sl 2 sts to cn, hold at back, k2, k2 from cn", "sl next 2 sts to cn and hold at back, k2, k2 from cn"),
    ("k to 2 sts before marker, k2tog, sm, k to end", "k to 2 sts before marker, k2tog, sm, k to end"),
    ("place marker, k10, turn", "pm, k10, turn"),
    ("k2 in green, k3 in white", "k2 in green, k3 in white"),
    ("work in pattern to last 3 sts, k3", "patt to last 3 sts, k3"),
    ("*k3, yo, k2; rep from * to end, ending last rep k1", "*k3, yo, k2; rep from * to end, ending last rep k1"),
    ("Knit into front and back of next st, k3", "kfb, k3"),
    ("*yfwd, k2tog; rep from * to end", "*yo, k2tog; rep from * to end"),
    ("K1 — p1 – k1", "k1, p1, k1"),
]


@pytest.mark.parametrize(("words", "meant"), SAME)
def test_a_wording_of_the_trade_is_read(words: str, meant: str, vocabulary: Vocabulary) -> None:
    """Each wording is read without a fault and means what the plain form says (common practice, no source)."""
    read = read_row(words, vocabulary)
    assert (say_row(read.parts, vocabulary), read.faults) == (meant, ())


@pytest.mark.parametrize(
    ("row", "least"),
    [("*k2, p2; rep from * to last 2 sts, k2", 6), ("k to last 3 sts, k3", 3), ("[k1] to last 2 sts, k2", 3)],
)
def test_a_starred_repeat_is_worked_at_least_once_and_a_plain_run_maybe_never(
    row: str, least: int, vocabulary: Vocabulary
) -> None:
    """The least count tells."""
    assert check_text(f"Row 1: {row}", vocabulary)["multiple"]["least"] == least


@pytest.mark.parametrize(
    ("words", "rule", "column"),
    [
        ("k1, zork, k2", "unknown-term", 5),
        ("k2, there will be plain stitches to knit at the end of the row", "unknown-term", 5),
        ("k1, (p1, k2", "bracket-not-closed", 5),
        ("k1, p1)", "bracket-not-closed", 7),
        ("k1, p1; rep from * to end", "repeat-without-start", 9),
        ("k2, *p2, k2", "repeat-without-end", 5),
    ],
)
def test_a_fault_has_its_column(words: str, rule: str, column: int, vocabulary: Vocabulary) -> None:
    """The place is that of the first word that cannot be read."""
    fault = read_row(words, vocabulary).faults[0]
    assert (fault.rule, fault.place.column) == (rule, column)


def test_reading_goes_on_after_a_fault(vocabulary: Vocabulary) -> None:
    """Two unknown words in a row are two faults, and the stitches between them are read."""
    read = read_row("zork, k2, blip, k3", vocabulary)
    assert [fault.word for fault in read.faults] == ["zork", "blip"]
    assert say_row(read.parts, vocabulary) == "k2, k3"


@pytest.mark.parametrize("words", ["k1, p1 (17 sts)", "k1, p1. 17 sts", "k1, p1 [17 sts]", "k1, p1 (17 stitches)"])
def test_a_printed_count_is_no_stitch(words: str, vocabulary: Vocabulary) -> None:
    """The count stands beside the row and is checked against it."""
    read = read_row(words, vocabulary)
    assert (say_row(read.parts, vocabulary), read.stated) == ("k1, p1", 17)


@pytest.mark.parametrize("deep", [10_000, 1_000])
def test_brackets_beyond_measure_are_one_fault(deep: int, vocabulary: Vocabulary) -> None:
    """Nobody can follow them, and the reader stays quick."""
    read = read_row("(" * deep + "k1" + ")" * deep, vocabulary)
    assert [fault.rule for fault in read.faults] == ["brackets-too-deep"]


def test_repeats_beyond_measure_are_one_fault_whatever_is_still_to_be_continued(vocabulary: Vocabulary) -> None:
    """Forty repeats of repeats and a bracket are told once, though a continued list would be one repeat more."""
    words = "k1" + ", repeat this 2 times" * 41 + ", continue knitting 2 together, (k1"
    assert [fault.rule for fault in read_row(words, vocabulary).faults].count("brackets-too-deep") == 1


def test_points_alone_say_nothing(vocabulary: Vocabulary) -> None:
    """Points go on with a list, and where no list stands there is nothing to go on with."""
    assert (read_row("...", vocabulary).parts, read_row("...", vocabulary).faults) == ((), ())


def test_a_word_as_long_as_no_word_is_like_none() -> None:
    """What runs on for sixty letters is no slip of a word that is known."""
    assert likely_word("knit" * 15, ["knit"]) is None
    assert likely_word("kint", ["knit"]) == "knit"


def test_a_row_that_means_nothing_is_given_up_and_said_so(vocabulary: Vocabulary) -> None:
    """Thirty places are told; the rest of the row is left unread, at a place that is told as well."""
    read = read_row("k1, zork, " * 1_000, vocabulary)
    assert [fault.rule for fault in read.faults] == ["unknown-term"] * 30 + ["too-many-unknown-terms"]
    assert read.faults[-1].place == Place(1, 30 * len("k1, zork, ") - 1)


def test_words_that_are_doubtful_alone_do_not_end_a_row(vocabulary: Vocabulary) -> None:
    """A stitch with two meanings in the trade may stand in a row as often as it likes."""
    read = read_row("k1b, p1, " * 100, vocabulary)
    assert {fault.rule for fault in read.faults} == {"ambiguous-term"}
    assert len(read.parts) == 200


@pytest.mark.parametrize("behind", ["", " sts", "-"])
def test_a_number_in_words_is_found_to_its_end(behind: str) -> None:
    """Of two numbers that begin alike the longer is found: "seventy-seven", not "seventy" or "seven"."""
    found = [re.match(NUMBER_WORD, word + behind) for word in NUMBER_WORDS]
    assert [match and match[0] for match in found] == [*NUMBER_WORDS]


ALONE = ("k3", "p2", "k2tog", "ssk", "yo", "m1", "kfb", "p2tog", "skp", "psso", "c4f", "k", "p", "cdd")


@given(st.lists(st.sampled_from(ALONE), min_size=1, max_size=12))
def test_stitches_in_abbreviations_need_no_commas(names: list[str]) -> None:
    """A name behind a name ends what is said of the first, as a comma does."""
    vocabulary = load_vocabulary()
    joined, apart = (read_row(sign.join(names), vocabulary) for sign in (" ", ", "))
    assert (joined.parts, [fault.rule for fault in joined.faults]) == (
        apart.parts,
        [each.rule for each in apart.faults],
    )
