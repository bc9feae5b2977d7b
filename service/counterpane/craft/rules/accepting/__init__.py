"""Rules about a text's remarks on its findings: each must name a rule, say why, and meet what it accepts."""

from counterpane.craft.findings import Rule
from counterpane.craft.rules.accepting.accepts_nothing import accepts_nothing
from counterpane.craft.rules.accepting.accepts_safety_rule import accepts_safety_rule
from counterpane.craft.rules.accepting.accepts_unknown_rule import accepts_unknown_rule
from counterpane.craft.rules.accepting.accepts_without_reason import accepts_without_reason
from counterpane.craft.rules.accepting.judged import Judged, judged

__all__ = ["RULES", "Judged", "judged"]

RULES: tuple[Rule[Judged], ...] = (
    accepts_unknown_rule,
    accepts_without_reason,
    accepts_nothing,
    accepts_safety_rule,
)
