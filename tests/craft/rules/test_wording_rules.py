"""Rules of wording beyond their examples: texts that trip them, and likenesses that must not."""

from __future__ import annotations

import pytest

from counterpane.craft.checking import Examined, examine
from counterpane.craft.findings import Finding, Rule
from counterpane.craft.rules import wording
from counterpane.craft.stitches import Vocabulary

from .wording_texts import BAD, GOOD, LIST

FRAGMENTS = (
    "Row 1 (RS): K2, *p3, k2; rep from * to end.",
    "Row 7: Sl 1, k to 3 sts before marker, k2tog, k1, sm, k to end.",
    "*k2, yo, k2tog; rep from * to last st, k1",
    "Row 12: With B, cast off 3 sts, k to end. (17 sts)",
    "Rep rows 1-4 until piece measures 60 cm, ending with a WS row.",
    "C4F",
)


def said(text: str, vocabulary: Vocabulary) -> set[str]:
    """Return the rules of wording that speak of a text."""
    examined = examine(text, vocabulary)
    return {finding.rule for rule in wording.RULES for finding in rule.check(examined)}


def cases(texts: dict[str, tuple[str, ...]]) -> list[tuple[str, str]]:
    """Pair each rule with each of its texts."""
    return [(slug, text) for slug, several in texts.items() for text in several]


@pytest.mark.parametrize(("slug", "text"), cases(BAD))
def test_a_rule_of_wording_speaks(slug: str, text: str, vocabulary: Vocabulary) -> None:
    """The rule finds its fault in other words than those of its example."""
    assert slug in said(text, vocabulary)


@pytest.mark.parametrize(("slug", "text"), cases(GOOD))
def test_a_rule_of_wording_is_silent(slug: str, text: str, vocabulary: Vocabulary) -> None:
    """What only looks like the fault is left alone."""
    assert slug not in said(text, vocabulary)


def test_every_rule_of_wording_has_texts_of_both_kinds() -> None:
    """No rule goes without two texts that trip it and two that do not."""
    for texts in (BAD, GOOD):
        assert {rule.slug for rule in wording.RULES} == set(texts)
        assert all(len(several) >= 2 for several in texts.values())


@pytest.mark.parametrize("text", FRAGMENTS)
def test_a_fragment_is_asked_for_nothing(text: str, vocabulary: Vocabulary) -> None:
    """A single pasted row is no pattern: it need not explain, measure or name anything."""
    assert said(text, vocabulary) == set()


def test_a_gap_of_any_width_costs_no_more_than_its_first_numbers(vocabulary: Vocabulary) -> None:
    """A number of 18 digits, as a slip of the hand gives, names six rows and no list of all of them."""
    text = f"Row 1: Knit.\nRow {10**18 - 1}: Purl.\nRow 3: Knit."
    rule = next(rule for rule in wording.RULES if rule.slug == "row-number-skipped")
    messages = [finding.message for finding in rule.check(examine(text, vocabulary))]
    assert messages == ["Rows 2, 4, 5, 6, 7, 8… are not given."]


def test_no_rule_of_wording_is_an_error(vocabulary: Vocabulary) -> None:
    """Wording is asked about; it never stops a count."""
    texts = [text for _, text in cases(BAD)]
    found = [f for text in texts for rule in wording.RULES for f in rule.check(examine(text, vocabulary))]
    assert {finding.severity for finding in found} == {"warning", "note"}


def found_by(slug: str, text: str, vocabulary: Vocabulary) -> list[Finding]:
    """Return what one rule of wording says of a text."""
    return [f for rule in wording.RULES if rule.slug == slug for f in rule.check(examine(text, vocabulary))]


def test_an_attachment_is_named_once(vocabulary: Vocabulary) -> None:
    """The first place of each kind is told, though the text comes back to it."""
    text = "For a baby.\nMaterials: wool, 4 buttons.\nRow 1: Knit.\n\nFinishing\nSew on the buttons."
    assert [finding.line for finding in found_by("attachment-near-a-baby", text, vocabulary)] == [2]


def test_an_explanation_in_signs_read_otherwise_is_left_to_the_author(vocabulary: Vocabulary) -> None:
    """Printed with a soft hyphen it is found to be that of another stitch, and its line is not written anew."""
    text = "k = knit\nssk = knit 2 to\N{SOFT HYPHEN}gether\n\nCast on 4 sts.\nRow 1: K2, ssk."
    (finding,) = found_by("abbreviation-explained-otherwise", text, vocabulary)
    assert finding.corrections == ()


def test_an_abbreviation_is_asked_for_once(vocabulary: Vocabulary) -> None:
    """However often it is used, one finding names it."""
    text = LIST + "".join(f"Row {number}: K1, ssk, k1.\n" for number in range(1, 30))
    examined = examine(text, vocabulary)
    found = [f for rule in wording.RULES if rule.slug == "abbreviation-not-explained" for f in rule.check(examined)]
    assert len(found) == 1
    assert found[0].corrections == ("sts = stitches\nssk = slip 2 stitches one at a time as if to knit, then knit them "
                                    "together through the back loops",)  # fmt: skip


def test_an_abbreviation_of_two_meanings_is_asked_for_without_one(vocabulary: Vocabulary) -> None:
    """Knitters mean two stitches by it, and only the author can say which."""
    (finding,) = found_by("abbreviation-not-explained", f"{LIST}Row 1: K1, k1b, k1.", vocabulary)
    assert (finding.hint, finding.corrections) == ("Say in the list what it means.", ())


@pytest.mark.parametrize("rule", wording.RULES, ids=lambda rule: rule.slug)
def test_a_corrected_line_answers_its_own_question(rule: Rule[Examined], vocabulary: Vocabulary) -> None:
    """A line put in the place of the one asked about is asked about no more."""
    for finding in rule.check(examine(rule.bad, vocabulary)):
        for correction in finding.corrections:
            lines = rule.bad.split("\n")
            lines[(finding.line or 1) - 1] = correction
            assert list(rule.check(examine("\n".join(lines), vocabulary))) == []
