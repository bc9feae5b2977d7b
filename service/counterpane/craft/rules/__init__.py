"""The rules: one file each, in families; and how a text is judged by them.

Nothing is registered by importing. A family lists its rules by name, and this module lists the families.
"""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import replace
from typing import Any

from counterpane.craft.checking import Examined, TextCorrection, with_corrections
from counterpane.craft.findings import Finding, Rule
from counterpane.craft.rules import (
    accepting,
    counting,
    fabric,
    fitting,
    label,
    licence,
    reading,
    safety,
    standing,
    style,
    wording,
)

TEXT_RULES: tuple[Rule[Examined], ...] = (*reading.RULES, *counting.RULES, *wording.RULES)
_FAMILIES: tuple[tuple[Rule[Any], ...], ...] = (
    TEXT_RULES,
    fitting.RULES,
    fabric.RULES,
    safety.RULES,
    style.RULES,
    accepting.RULES,
    label.RULES,
    licence.RULES,
    standing.RULES,
)
ALL: Mapping[str, Rule[Any]] = {rule.slug: rule for rules in _FAMILIES for rule in rules}
_LOUDEST = {"error": 0, "warning": 1, "note": 2}


def judge_text(examined: Examined) -> tuple[Finding, ...]:
    """Return what the rules of texts say of one, in the order of its places, the gravest first.

    What the text accepts, or treats otherwise, stands as it asks for.
    """
    return with_findings(examined)[1]


def judge_sizes(sizes: Sequence[Examined]) -> list[tuple[Finding, ...]]:
    """Return what the rules of texts say of each size of one; its wording is the same in all and judged once.

    An acceptance that is of use in one size is no remark in the others.
    """
    worded, found = _worded(sizes[0]), []
    corrections: tuple[TextCorrection, ...] | None = None
    for examined in sizes:
        known, findings = with_findings(examined, worded, corrections, sizes)
        corrections = known.corrections if corrections is None and known is not examined else corrections
        found.append(findings)
    in_all = set(found[0]).intersection(*found)
    return [tuple(each for each in own if each.rule != "accepts-nothing" or each in in_all) for own in found]


def with_findings(
    examined: Examined,
    worded: Sequence[Finding] | None = None,
    corrections: tuple[TextCorrection, ...] | None = None,
    in_sizes: Sequence[Examined] = (),
) -> tuple[Examined, tuple[Finding, ...]]:
    """Return a text with its corrections, looked for where a row or count unaccepted is wrong, and its findings.

    `corrections` are those found for another size of the text, which suit all its sizes; `in_sizes` is what is known of
    each of them.
    """
    worded = _worded(examined) if worded is None else worded
    findings = _findings(examined, worded)
    wrong = (finding for finding in findings if ALL[finding.rule].family != "wording")
    if any(_LOUDEST.get(finding.severity, 0) < _LOUDEST["note"] for finding in wrong):
        examined = (
            with_corrections(examined, in_sizes) if corrections is None else replace(examined, corrections=corrections)
        )
        findings = _findings(examined, worded) if examined.corrections else findings
    return examined, findings


def _worded(examined: Examined) -> tuple[Finding, ...]:
    rules = (rule for rule in TEXT_RULES if rule.family == "wording")
    return tuple(finding for rule in rules for finding in rule.check(examined))


def _findings(examined: Examined, worded: Sequence[Finding]) -> tuple[Finding, ...]:
    rules = (rule for rule in TEXT_RULES if rule.family != "wording")
    counted = (finding for rule in rules for finding in rule.check(examined))
    judged = accepting.judged(examined, (*counted, *worded), {slug: rule.family for slug, rule in ALL.items()})
    remarked = (finding for rule in accepting.RULES for finding in rule.check(judged))
    everything = (*judged.findings, *remarked)
    quietest = len(_LOUDEST)
    return tuple(
        sorted(everything, key=lambda f: (f.line or 0, _LOUDEST.get(f.severity, quietest), f.column or 0, f.rule))
    )
