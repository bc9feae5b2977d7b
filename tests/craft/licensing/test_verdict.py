"""Verdicts over all mixes of licences, against the sentences of the legal codes."""

from __future__ import annotations

import json
from itertools import product

import pytest
from hypothesis import given
from hypothesis import strategies as st

from counterpane.craft.findings import Rule
from counterpane.craft.licensing import LICENCES, Licensed, Use, allows
from counterpane.craft.licensing.verdict import credit_line, sharing_line, verdict
from counterpane.craft.rules.licence import RULES, judge_licences
from counterpane.library.review.licences import licensed_in

MAY_SHARE_UNDER = {
    "CC0-1.0": {"CC0-1.0", "CC-BY-4.0", "CC-BY-SA-4.0"},
    "CC-BY-4.0": {"CC-BY-4.0", "CC-BY-SA-4.0"},
    "CC-BY-SA-4.0": {"CC-BY-SA-4.0"},
}
"""For material under each licence, the licences of what is made of it.

CC0 1.0 section 2 waives all conditions; CC BY 4.0 section 3(a)(4): the adapter's licence must not prevent recipients
from complying with CC BY, which a waiver of all conditions would; CC BY-SA 4.0 section 3(b)(1): the same licence.
"""

licences = st.lists(st.sampled_from(sorted(LICENCES)), max_size=6)


def uses(names: list[str]) -> tuple[Use, ...]:
    """Return parts of these licences."""
    return tuple(Use(f"part-{place}", f"Part {place}", "anna", name, "a book") for place, name in enumerate(names))


@pytest.mark.parametrize(("part", "whole"), list(product(MAY_SHARE_UNDER, MAY_SHARE_UNDER)))
def test_each_pair_is_as_the_legal_codes_say(part: str, whole: str) -> None:
    """What may be shared under what is the table of the legal codes, pair by pair."""
    assert allows(LICENCES[part], LICENCES[whole]) is (whole in MAY_SHARE_UNDER[part])


@given(licences)
def test_the_verdict_is_what_all_parts_allow(names: list[str]) -> None:
    """The whole may be shared under exactly what each part's own row of the table holds."""
    together = set(MAY_SHARE_UNDER).intersection(*(MAY_SHARE_UNDER[name] for name in names))
    assert {each.spdx for each in verdict(Licensed(uses(names))).may} == together


@given(licences)
def test_the_freest_licence_is_the_strictest_part(names: list[str]) -> None:
    """Of the licences in their order the verdict is the last that a part has."""
    order = list(LICENCES)
    found = verdict(Licensed(uses(names))).licence
    assert found is not None and found.spdx == order[max(map(order.index, names), default=0)]


@given(licences)
def test_without_the_parts_that_decide_all_is_free(names: list[str]) -> None:
    """The parts that are named as the reason are all of them: the others ask for nothing."""
    parts = uses(names)
    because = verdict(Licensed(parts)).because
    rest = verdict(Licensed(tuple(use for use in parts if use not in because)))
    assert rest.licence == LICENCES["CC0-1.0"]


@given(licences, st.sampled_from(sorted(LICENCES)))
def test_a_licence_is_refused_where_the_verdict_leaves_it_out(names: list[str], wanted: str) -> None:
    """The rule speaks where the wanted licence is none of those that may be, and its correction is one that may."""
    found = [each for each in judge_licences(Licensed(uses(names), wanted)) if each.rule == "licence-too-free"]
    may = {each.spdx for each in verdict(Licensed(uses(names))).may}
    assert bool(found) is (wanted not in may)
    assert all(change.value in may for each in found for change in each.changes)


def test_an_unknown_licence_lets_nothing_be_shared() -> None:
    """What nobody allowed is not taken as free, and the sentence says whom to ask."""
    found = verdict(Licensed(uses(["CC0-1.0", "ask anna"])))
    assert (found.licence, found.may) == (None, ())
    assert "is not known: ask those who made Part 1" in sharing_line(found)


def test_a_credit_holds_what_the_licence_asks_for() -> None:
    """CC BY 4.0 section 3(a)(1): maker, notice, licence with its address, address of the material, changes."""
    use = Use("a", "Ripple", "anna", "CC-BY-4.0", "own work", "© 2020 anna", "https://x.test/r", ("ben: wider edge",))
    line = credit_line(use)
    for asked in ("anna", "© 2020 anna", "creativecommons.org/licenses/by/4.0", "https://x.test/r", "ben: wider edge"):
        assert asked in line


def test_the_sentence_names_the_parts_that_decide() -> None:
    """Who wonders why not freer reads which part asks for it."""
    line = sharing_line(verdict(Licensed(uses(["CC0-1.0", "CC-BY-SA-4.0"]))))
    assert "CC-BY-SA-4.0" in line and line.endswith("because of Part 1.")


@pytest.mark.parametrize("rule", RULES, ids=lambda rule: rule.slug)
def test_the_bad_example_trips_its_rule_and_the_good_one_none(rule: Rule[Licensed]) -> None:
    """What is wrong in the one is put right in the other."""
    found = judge_licences(licensed_in(json.loads(rule.bad)))
    assert [(each.rule, each.severity) for each in found] == [(rule.slug, rule.severity)]
    assert judge_licences(licensed_in(json.loads(rule.good))) == ()
