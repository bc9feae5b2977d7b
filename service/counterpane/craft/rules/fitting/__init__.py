"""Rules of the family fitting."""

from __future__ import annotations

from counterpane.craft.constructions.attempts import Attempt
from counterpane.craft.findings import Rule

RULES: tuple[Rule[Attempt], ...] = ()
