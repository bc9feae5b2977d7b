"""Refusals as RFC 9457 problem documents, and which error of the inside becomes which sort of them.

This is the one table of the kind. `Problem` is raised by the layer itself; domain errors are looked up by their class.
"""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from typing import Any

from counterpane.api.sorts import SORTS
from counterpane.craft.constructions import CannotBePlanned
from counterpane.craft.findings import Finding
from counterpane.library import errors
from counterpane.library.plans.plan_requests import UnknownPart
from counterpane.library.texts.sheets import UnknownStyle

MEDIA_TYPE = "application/problem+json"
LONGEST_DETAIL = 2_000
"""Characters of a detail: what was sent may stand in it, and is not sent back at any length; house."""


class Problem(Exception):
    """A refusal with the members that are its own; `headers` go with the answer."""

    def __init__(
        self, name: str, detail: str, *, hint: str = "", headers: Mapping[str, str] | None = None, **members: Any
    ) -> None:
        super().__init__(detail)
        self.sort = SORTS[name]
        self.detail = detail
        self.hint = hint or self.sort.remedy
        self.headers = dict(headers or {})
        self.members = {key: value for key, value in members.items() if value}

    def document(self, request_id: str) -> dict[str, Any]:
        """Return the members of the problem document."""
        fixed = {"type": self.sort.type, "title": self.sort.title, "status": self.sort.status}
        detail = self.detail if len(self.detail) <= LONGEST_DETAIL else f"{self.detail[:LONGEST_DETAIL]}…"
        return fixed | {"detail": detail, "hint": self.hint, "request_id": request_id} | self.members


def of(error: Exception) -> Problem | None:
    """Return the problem that a domain error is; None for an error that is a fault of this program."""
    name = next((NAMES[sort] for sort in type(error).__mro__ if sort in NAMES), None)
    if name is None:
        return None
    members, headers = _particulars(error)
    return Problem(name, str(error), hint=getattr(error, "hint", ""), headers=headers, **members)


def _particulars(error: Exception) -> tuple[dict[str, Any], dict[str, str]]:
    """Return the members and headers that belong to this error alone."""
    members: dict[str, Any] = {}
    headers: dict[str, str] = {}
    if isinstance(error, errors.Refused | CannotBePlanned):
        members = {"findings": [finding(each) for each in error.findings], "corrections": corrections(error.findings)}
    elif isinstance(error, errors.Incomplete):
        hint = "Send the answer as the member that the pointer names."
        questions = error.questions
        asked = [{"pointer": name, "in": "body", "message": question, "hint": hint} for name, question in questions]
        members = {"errors": asked, "derived": error.derived}
    elif isinstance(error, errors.Stale):
        members = {"current": f'"{error.current}"'}
    elif isinstance(error, errors.Unknown):
        headers = {"WWW-Authenticate": 'Bearer realm="counterpane"'}
    elif isinstance(error, errors.NotAllowed):
        headers = {"WWW-Authenticate": f'Bearer realm="counterpane", error="insufficient_scope", scope="{error.needs}"'}
    elif isinstance(error, errors.Busy):
        headers = {"Retry-After": "1"}
    elif (pointer := getattr(error, "pointer", None)) is not None:
        fault = {"pointer": pointer, "in": "body", "message": str(error), "hint": getattr(error, "hint", "")}
        members = {"errors": [fault]}
    return members, headers


def finding(each: Finding) -> dict[str, Any]:
    """Return a finding as JSON values, with its place in a text or its pointer into the request.

    Its corrections are whole texts, or changes of the request.
    """
    names = ("rule", "severity", "message", "hint", "line", "column", "pointer")
    better = list(each.corrections) or corrections((each,))
    return {name: getattr(each, name) for name in names} | {"corrections": better}


def corrections(findings: Iterable[Finding]) -> list[dict[str, Any]]:
    """Return the changes of the request that the findings propose, each once."""
    found = {(change.pointer, change.value): change for each in findings for change in each.changes}
    return [{"pointer": each.pointer, "value": each.value, "why": each.why} for each in found.values()]


NAMES: Mapping[type[Exception], str] = {
    UnknownPart: "not-usable",
    UnknownStyle: "not-usable",
    errors.NotFound: "not-found",
    errors.Gone: "withdrawn",
    errors.Moved: "moved",
    errors.NotTheirs: "not-theirs",
    errors.Taken: "taken",
    errors.WrittenOtherwise: "written-otherwise",
    errors.Stale: "stale",
    errors.KeyReused: "key-reused",
    errors.Refused: "does-not-prove",
    errors.LicenceRefused: "licence-refuses",
    errors.Incomplete: "incomplete",
    errors.Unkeepable: "cannot-be-kept",
    errors.Unknown: "token-needed",
    errors.NotAllowed: "not-allowed",
    errors.Busy: "busy",
    errors.Unreadable: "busy",
    errors.LibraryError: "not-usable",
    CannotBePlanned: "cannot-be-planned",
}
