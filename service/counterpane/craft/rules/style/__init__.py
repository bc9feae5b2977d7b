"""Rules about house style, which speak only where a style is asked for: what a house prints, against what is there."""

from collections.abc import Mapping

from counterpane.craft.checking import Examined
from counterpane.craft.checking.printed import Printed, printed
from counterpane.craft.findings import Family, Finding, Rule
from counterpane.craft.rules.accepting import judged
from counterpane.craft.rules.style.style_abbreviation import style_abbreviation
from counterpane.craft.rules.style.style_count import style_count
from counterpane.craft.rules.style.style_first_letter import style_first_letter
from counterpane.craft.rules.style.style_repeat import style_repeat
from counterpane.craft.rules.style.style_row_label import style_row_label
from counterpane.craft.rules.style.style_side import style_side
from counterpane.craft.rules.style.style_sizes import style_sizes
from counterpane.craft.rules.style.style_terms import style_terms
from counterpane.craft.rules.style.style_times import style_times
from counterpane.craft.rules.style.style_units import style_units
from counterpane.craft.styles import Style

RULES: tuple[Rule[Printed], ...] = (
    style_terms,
    style_row_label,
    style_side,
    style_first_letter,
    style_abbreviation,
    style_repeat,
    style_times,
    style_count,
    style_sizes,
    style_units,
)
_FAMILIES: Mapping[str, Family] = {rule.slug: rule.family for rule in RULES}


def judge_style(examined: Examined, style: Style) -> tuple[Finding, ...]:
    """Return where a text departs from a house style, in the order of its places: notes, unless the text says else."""
    text = printed(examined, style)
    found = judged(examined, (each for rule in RULES for each in rule.check(text)), _FAMILIES).findings
    return tuple(sorted(found, key=lambda finding: (finding.line or 0, finding.column or 0, finding.rule)))
