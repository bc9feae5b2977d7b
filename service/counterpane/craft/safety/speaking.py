"""What a safety rule says: a finding with its reference, basis, markets and source."""

from __future__ import annotations

from counterpane.craft.findings import Finding, Rule, Severity
from counterpane.craft.records import record
from counterpane.craft.safety.inputs import SafetyInputs
from counterpane.craft.safety.words import Basis


@record
class SafetyFinding(Finding):
    """A finding with its reference, what its limit rests on, the markets it speaks for, and its source."""

    reference: str = ""
    basis: str = "house"
    markets: tuple[str, ...] = ()
    source: str = ""

    @property
    def words(self) -> str:
        """Return the message and the next step as one text."""
        return f"{self.message} {self.hint}".strip()


def speak(
    rule: Rule[SafetyInputs],
    severity: Severity,
    message: str,
    hint: str,
    *,
    markets: tuple[str, ...] | None = None,
    basis: Basis | None = None,
    source: str | None = None,
) -> SafetyFinding:
    """Return what a rule says, with the rule's own reference, basis and source where no others are given."""
    return SafetyFinding(
        rule.slug,
        severity,
        message,
        hint,
        reference=rule.reference or "",
        basis=basis or rule.basis or "house",
        markets=markets or (),
        source=source or rule.source,
    )
