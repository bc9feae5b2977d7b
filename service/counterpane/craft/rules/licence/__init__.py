"""Rules about licences: what the makers of parts ask of who shares a pattern that uses them."""

from __future__ import annotations

from counterpane.craft.findings import Finding, Rule
from counterpane.craft.licensing import Licensed
from counterpane.craft.rules.licence.licence_not_known import licence_not_known
from counterpane.craft.rules.licence.licence_too_free import licence_too_free
from counterpane.craft.rules.licence.maker_not_named import maker_not_named

RULES: tuple[Rule[Licensed], ...] = (licence_not_known, licence_too_free, maker_not_named)


def judge_licences(licensed: Licensed) -> tuple[Finding, ...]:
    """Return what the rules of licences say of a pattern, by the order of the rules."""
    return tuple(finding for rule in RULES for finding in rule.check(licensed))
