"""The rules: one file each, in families; and how a text is judged by them.

Nothing is registered by importing. A family lists its rules by name, and this module lists the families.
"""

from __future__ import annotations

from collections.abc import Mapping
from typing import Any

from counterpane.craft.checking import Examined, with_mends
from counterpane.craft.findings import Finding, Rule
from counterpane.craft.rules import accepting, counting, fabric, fitting, reading, safety, style

TEXT_RULES: tuple[Rule[Examined], ...] = (*reading.RULES, *counting.RULES)
_FAMILIES: tuple[tuple[Rule[Any], ...], ...] = (
    TEXT_RULES,
    fitting.RULES,
    fabric.RULES,
    safety.RULES,
    style.RULES,
    accepting.RULES,
)
ALL: Mapping[str, Rule[Any]] = {rule.slug: rule for rules in _FAMILIES for rule in rules}
_LOUDEST = {"error": 0, "warning": 1, "note": 2}


def judge_text(examined: Examined) -> tuple[Finding, ...]:
    """Return what the rules of texts say of one, in the order of its places, the gravest first.

    What the text accepts, or treats otherwise, stands as it asks for.
    """
    return with_findings(examined)[1]


def with_findings(examined: Examined) -> tuple[Examined, tuple[Finding, ...]]:
    """Return a text with its mends and its findings; mends are looked for where anything unaccepted is wrong."""
    findings = _findings(examined)
    if any(_LOUDEST.get(finding.severity, 0) < _LOUDEST["note"] for finding in findings):
        examined = with_mends(examined)
        findings = _findings(examined)
    return examined, findings


def _findings(examined: Examined) -> tuple[Finding, ...]:
    found = (finding for rule in TEXT_RULES for finding in rule.check(examined))
    judged = accepting.judged(examined, found, {slug: rule.family for slug, rule in ALL.items()})
    remarked = (finding for rule in accepting.RULES for finding in rule.check(judged))
    everything = (*judged.findings, *remarked)
    return tuple(sorted(everything, key=lambda f: (f.line or 0, _LOUDEST.get(f.severity, 3), f.column or 0, f.rule)))
