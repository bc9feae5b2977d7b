"""The safety record of a pattern as blocks: what speaks, what was not assessed, and what stands always."""

from __future__ import annotations

from collections.abc import Iterator

from counterpane.craft.pattern import Caution, Cautions
from counterpane.press.blocks import Block, Heading, Items, Paragraph

_SEVERITIES = {"stop": "Stop", "warn": "Warning", "note": "Note"}
_NOT_SAID = "Read for: age, use and markets not stated; more may apply to a child of a certain age, a use or a country."
_NO_PASS = "What is not assessed was not looked at. That is no pass."


def cautions_blocks(cautions: Cautions) -> Iterator[Block]:
    """Give the cautions of a pattern, those of this blanket first."""
    if cautions.findings:
        yield Heading("For this blanket", 3)
        yield Paragraph(cautions.read_for or _NOT_SAID)
        yield Items(tuple(map(_finding, cautions.findings)))
    if cautions.held:
        yield Heading(f"Held against: {cautions.held.name}", 3)
        yield Items(cautions.held.items)
    yield from _records(cautions)
    told = (
        ("Measured", cautions.measured),
        ("Where sources differ", cautions.conflicts),
        ("Measuring at home", cautions.home_check),
    )
    for heading, items in told:
        if items:
            yield Heading(heading, 3)
            yield Items(items)
    yield Heading("Always", 3)
    yield Items(cautions.standing)


def _finding(finding: Caution) -> str:
    severity = _SEVERITIES.get(finding.severity, finding.severity)
    markets = f"; {', '.join(finding.markets)}" if finding.markets else ""
    return f"{severity} ({finding.reference}, {finding.basis}{markets}): {finding.message} Source: {finding.source}."


def _records(cautions: Cautions) -> Iterator[Block]:
    told = {
        "Not assessed for want of figures": "; ".join(cautions.not_assessed),
        "Looked at, and nothing found in the figures entered": "; ".join(cautions.assessed),
        "Concerns another age or use": "; ".join(cautions.not_applicable),
    }
    yield Heading("What was assessed and what was not", 3)
    yield Items((_NO_PASS, *(f"{what}: {rules}." for what, rules in told.items() if rules)))
    if cautions.parts or cautions.estimates:
        yield Heading("What the parts record", 3)
        yield Items(tuple(f"{part.name}: {part.text}" for part in cautions.parts))
        yield Items(cautions.estimates)
