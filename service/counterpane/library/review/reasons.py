"""Why something is moved or decided: a closed list of codes, each with its meaning and what it is a reason for.

The codes are house. A code is for counting and sorting; people read the sentence that stands beside it.
"""

from __future__ import annotations

from dataclasses import asdict, dataclass
from typing import Any

from counterpane.library.values import BadInput

LONGEST_SENTENCE = 1_000
"""Characters of the sentence beside a code; house."""


@dataclass(frozen=True, slots=True)
class Reason:
    """A code, what it means, and the states or decisions that it may be a reason for."""

    code: str
    meaning: str
    serves: tuple[str, ...]


REASONS: tuple[Reason, ...] = (
    Reason("sound", "It was read and tried, and it holds.", ("accept", "accepted")),
    Reason(
        "cleared",
        "What was feared or found was looked at, and is no fault.",
        ("accept", "dismiss", "accepted", "draft"),
    ),
    Reason("wording-unclear", "A knitter could read a row in two ways.", ("ask", "yanked")),
    Reason("example-missing", "A worked example is missing or shows too little.", ("ask",)),
    Reason("safety-not-told", "Something about a baby's safety must still be said.", ("ask", "uphold", "quarantined")),
    Reason("source-missing", "Where it comes from must still be said.", ("ask", "quarantined", "yanked")),
    Reason("licence-unclear", "Under which licence it may be used must be said.", ("ask", "quarantined", "refuse")),
    Reason("like-another", "It is like one that is there, and what is its own does not show.", ("ask", "refuse")),
    Reason("not-for-blankets", "It has no place in a knitted baby blanket.", ("refuse",)),
    Reason("no-answer", "What was asked for did not come.", ("refuse",)),
    Reason("licence-forbids", "Its licence, or the law, does not let it be kept.", ("refuse", "withdrawn")),
    Reason("hazard", "It can hurt a baby.", ("refuse", "uphold", "quarantined", "yanked", "withdrawn")),
    Reason("safety-report", "Somebody reported that it may hurt a baby.", ("quarantined",)),
    Reason("replaced", "Another one does the same, and better.", ("deprecated",)),
    Reason("misprint", "It does not say what was meant.", ("yanked",)),
    Reason("by-its-author", "Who added it asks for it.", ("draft", "yanked", "withdrawn", "deprecated")),
    Reason("submitted", "It was handed in to be read.", ("in-review",)),
    Reason("told-by-peer", "The library from which it was taken over says so. Nobody gives this one by hand.", ()),
    Reason("sent-back", "It was read, and is with who added it again.", ("draft",)),
)
BY_CODE = {reason.code: reason for reason in REASONS}


def refuse_unfit(code: str, said: str, serves: str) -> None:
    """Raise BadInput for a code that is not known or is no reason for this, and for a sentence that says nothing."""
    fitting = ", ".join(reason.code for reason in REASONS if serves in reason.serves)
    if code not in BY_CODE or serves not in BY_CODE[code].serves:
        raise BadInput("/because", f"{code!r} is no reason for {serves!r}.", f"Use one of: {fitting}.")
    if not said.strip() or len(said) > LONGEST_SENTENCE:
        message = f"A sentence of 1 to {LONGEST_SENTENCE} characters is wanted."
        raise BadInput("/say", message, "Say to the people concerned why.")


def reasons_json() -> list[dict[str, Any]]:
    """Return all reasons as JSON values."""
    return [asdict(reason) for reason in REASONS]
