"""Rules of the family fabric."""

from __future__ import annotations

from counterpane.craft.constructions.attempts import Attempt
from counterpane.craft.findings import Rule

RULES: tuple[Rule[Attempt], ...] = ()
