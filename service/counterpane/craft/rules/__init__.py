"""The rules: one file each, in families; and how a text is judged by them.

Nothing is registered by importing. A family lists its rules by name, and this module lists the families.
"""

from __future__ import annotations

from collections.abc import Mapping
from typing import Any

from counterpane.craft.checking import Examined, with_mends
from counterpane.craft.findings import Finding, Rule
from counterpane.craft.rules import counting, fabric, fitting, reading, safety, style

TEXT_RULES: tuple[Rule[Examined], ...] = (*reading.RULES, *counting.RULES)
_FAMILIES: tuple[tuple[Rule[Any], ...], ...] = (TEXT_RULES, fitting.RULES, fabric.RULES, safety.RULES, style.RULES)
ALL: Mapping[str, Rule[Any]] = {rule.slug: rule for rules in _FAMILIES for rule in rules}
_LOUDEST = {"error": 0, "warning": 1, "note": 2}


def judge_text(examined: Examined) -> tuple[Finding, ...]:
    """Return what the reading and counting rules say of a text, in the order of its places, the gravest first."""
    examined = with_mends(examined)
    found = [finding for rule in TEXT_RULES for finding in rule.check(examined)]
    return tuple(sorted(found, key=lambda f: (f.line or 0, _LOUDEST.get(f.severity, 3), f.column or 0, f.rule)))
