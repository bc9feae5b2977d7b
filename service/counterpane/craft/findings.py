"""What a rule says: findings, their severity, and the rule itself.

A rule is one small function in a file of its own. The decorator `rule` turns it into a value that carries everything a
page about it needs; nothing is registered by importing: each family lists its rules by name.
"""

from __future__ import annotations

from collections.abc import Callable, Iterable
from dataclasses import dataclass
from typing import Generic, Literal, TypeVar

from counterpane.craft.records import record

Severity = Literal["error", "warning", "note", "stop", "warn"]
Family = Literal[
    "reading",
    "counting",
    "fitting",
    "fabric",
    "safety",
    "wording",
    "style",
    "accepting",
    "label",
    "licence",
    "standing",
]
Subject = TypeVar("Subject")


@dataclass(frozen=True, slots=True)
class Correction:
    """A changed value at a JSON pointer of a plan request that makes the plan possible; None leaves the part out."""

    pointer: str
    value: int | str | None
    why: str


@record
class Finding:
    """One thing a rule has to say, with its place, its numbers and the next step.

    Lines and columns count from 1; both are None for a finding about a plan, which carries a `pointer` instead.
    `corrections` are whole corrected row texts; `changes` are corrected values of a plan request.
    """

    rule: str
    severity: Severity
    message: str
    hint: str
    line: int | None = None
    column: int | None = None
    pointer: str | None = None
    corrections: tuple[str, ...] = ()
    changes: tuple[Correction, ...] = ()


@dataclass(frozen=True, slots=True)
class Rule(Generic[Subject]):
    """A rule: what it looks for, why, a bad example, the same made good, and the check itself.

    `bad` and `good` are texts as a person would send them: a row text, or the JSON of a plan request or of safety
    inputs. Of safety rules only: `basis` is what a limit rests on and `jurisdiction` where its sources speak; `needs`
    names the inputs without which the rule is not assessed, "a or b" where one of two will do; `scope` is whom or what
    use it concerns at all ("under 12 months and use sleep"), None for everybody.
    """

    slug: str
    family: Family
    severity: Severity
    title: str
    reason: str
    bad: str
    good: str
    source: str
    check: Callable[[Subject], Iterable[Finding]]
    reference: str | None = None
    basis: str | None = None
    needs: tuple[str, ...] = ()
    scope: str | None = None
    jurisdiction: str | None = None


def rule(
    slug: str,
    *,
    family: Family,
    severity: Severity,
    bad: str,
    good: str,
    source: str = "common practice, no source",
    reference: str | None = None,
    basis: str | None = None,
    needs: tuple[str, ...] = (),
    scope: str | None = None,
    jurisdiction: str | None = None,
) -> Callable[[Callable[[Subject], Iterable[Finding]]], Rule[Subject]]:
    """Turn a check function into a rule; the docstring's first line is the title, the rest the reason."""

    def wrap(check: Callable[[Subject], Iterable[Finding]]) -> Rule[Subject]:
        title, _, reason = (check.__doc__ or "").strip().partition("\n")
        text = " ".join(reason.split())
        told = (slug, family, severity, title, text, bad, good, source)
        return Rule(*told, check, reference, basis, needs, scope, jurisdiction)

    return wrap
