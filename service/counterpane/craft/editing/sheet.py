"""A sheet and its queries. What a person writes in them is `question`, `answer`, `decision` and `note`."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Literal, get_args

from counterpane.craft.findings import Severity

State = Literal["open", "answered", "to change", "still there", "back", "kept", "settled"]
Decision = Literal["change", "keep", "done"]
STATES: tuple[State, ...] = get_args(State)
DECISIONS: tuple[Decision, ...] = get_args(Decision)
STANDING: tuple[State, ...] = ("open", "answered", "to change", "still there", "back")
"""The states in which somebody still has to do something."""


@dataclass(frozen=True, slots=True)
class Query:
    """One question to the designer.

    `rule` is None for a question of the editor's own. `number` is never given to another query of the sheet. `line`,
    `column` and `printed` are where it was seen last, the line as printed; `words` those at the place. `sizes` numbers
    the sizes it is about, empty for all; `accepted` says that a line of the text accepts the finding. `finding`,
    `hint` and `suggestions` are the words of the rule.
    `state` is worked out at each check:
    "open" nobody has answered; "answered" the designer has; "to change" it was decided that the text changes; "still
    there" the text was changed and the finding stands; "back" it was settled once; "kept" it is meant so; "settled".
    """

    number: int
    question: str
    state: State = "open"
    answer: str = ""
    decision: Decision | None = None
    note: str = ""
    rule: str | None = None
    severity: Severity | None = None
    section: str | None = None
    row: str | None = None
    line: int | None = None
    column: int | None = None
    printed: str = ""
    words: str = ""
    sizes: tuple[int, ...] = ()
    accepted: bool = False
    finding: str = ""
    hint: str = ""
    suggestions: tuple[str, ...] = ()


@dataclass(frozen=True, slots=True)
class Sheet:
    """The queries of one text, in the order in which they were first asked.

    `text` names the text, `checked` is the SHA-256 of the text last checked; `cast_on`, `terms` and `style` are how it
    was checked.
    """

    text: str | None = None
    checked: str | None = None
    cast_on: int | None = None
    terms: str | None = None
    style: str | None = None
    queries: tuple[Query, ...] = ()
