"""Mutated patterns: no exception, no slip missed that a needle would find, and no alarm where a needle finds none.

What the needle finds is decided by the second road alone: the rows are worked loop by loop from the cast-on, twice
where they are to be repeated, to where the working stops or a printed count is missed.

COUNTERPANE_MUTATIONS=10000 runs as many; the suite runs a share of them, from the same seed.
"""

from __future__ import annotations

import os
from collections import Counter
from collections.abc import Mapping

import pytest

from counterpane.craft.checking import Examined, examine
from counterpane.craft.component import Component
from counterpane.craft.findings import Finding
from counterpane.craft.rows.instructions import AgainStep
from counterpane.craft.rules import counting, judge_text
from counterpane.craft.stitches import Vocabulary
from counterpane.craft.trace import trace

from .mutations import mutated, sound_patterns

NUMBER = int(os.environ.get("COUNTERPANE_MUTATIONS", "300"))
SEED = 1843
FALSE_ALARMS = 0.01
MOST_PASSES = 60
COUNTING = frozenset(rule.slug for rule in counting.RULES)


@pytest.fixture(scope="module")
def patterns(starters: Mapping[str, Component], vocabulary: Vocabulary) -> list[str]:
    """Return the sound patterns."""
    rows = {f"{slug} {v.name}": v.rows for slug, starter in starters.items() for v in starter.versions}
    return sound_patterns(rows, vocabulary)


def needle_finds(examined: Examined) -> bool | None:
    """Tell whether a needle shows a fault; None where a row cannot be read or a working cannot be followed."""
    rows, stated = examined.rows, examined.instructions.cast_on
    if stated is None or not rows or not all(row.readable for row in rows):
        return None
    last = examined.instructions.steps[-1]
    again = last if isinstance(last, AgainStep) else None
    passes = 0 if again is None else 1 if again.again.remain is None else MOST_PASSES
    order = [*range(len(rows)), *(again.rows * passes if again else ())]
    worked = trace([rows[i].parts for i in order], stated.count, examined.vocabulary, [rows[i].side for i in order])
    remain = again.again.remain if again else None
    for done, (at, step) in enumerate(zip(order, worked.steps, strict=True)):
        if step.misfit is not None:
            return None if step.misfit.slug == "unproved" else True
        if done < len(rows) and rows[at].stated not in (None, step.after):
            return True
        if step.after == remain and done >= len(rows) - 1 and at == order[-1]:
            return False
    return remain is not None


def loud(findings: tuple[Finding, ...]) -> list[str]:
    """Return the rules of the errors and warnings."""
    return [finding.rule for finding in findings if finding.severity in ("error", "warning")]


def test_sound_patterns_have_no_finding_above_a_note(patterns: list[str], vocabulary: Vocabulary) -> None:
    """There are enough of them, a needle finds nothing in any, and no more than one in a hundred is doubted."""
    judged = [(text, loud(judge_text(examine(text, vocabulary)))) for text in patterns]
    assert len(patterns) > 40
    assert [text for text in patterns if needle_finds(examine(text, vocabulary))] == []
    assert sum(bool(rules) for _, rules in judged) <= FALSE_ALARMS * len(patterns), [each for each in judged if each[1]]


def test_mutations_are_found_as_far_as_a_needle_finds_them(patterns: list[str], vocabulary: Vocabulary) -> None:
    """A row stuck or a count missed is an error or warning; where all comes out, hardly any error of counting is."""
    tally: Counter[str] = Counter()
    missed, alarms = [], []
    for name, text in mutated(patterns, NUMBER, SEED):
        examined = examine(text, vocabulary)
        findings = judge_text(examined)
        found = needle_finds(examined)
        errors = [f.rule for f in findings if f.severity == "error" and f.rule in COUNTING]
        tally[f"needle finds: {found}"] += 1
        tally[f"{name}: found" if loud(findings) else f"{name}: nothing"] += 1
        unread = not all(row.readable for row in examined.rows)
        if (found or unread) and not loud(findings):
            missed.append((name, text))
        elif found is False and errors:
            alarms.append((name, text, errors))
    print(
        f"{NUMBER} mutations, {len(missed)} missed, {len(alarms)} false alarms: {dict(sorted(tally.items()))} {alarms}"
    )
    assert missed == []
    assert len(alarms) <= FALSE_ALARMS * tally["needle finds: False"], alarms
