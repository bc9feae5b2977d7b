"""A component in a place where its kind cannot be used."""

from __future__ import annotations

from collections.abc import Iterator

from counterpane.craft.constructions.attempts import Attempt
from counterpane.craft.constructions.obstacles import WrongKind
from counterpane.craft.findings import Finding, rule


@rule(
    "part-of-wrong-kind",
    family="fitting",
    severity="error",
    bad=(
        '{"parts": {"body": "long-tail"}, '
        '"gauge": {"stitches": 20, "rows": 40, "over_cm": 10, "in": "garter"}, '
        '"size": {"width_cm": 70, "length_cm": 90}}'
    ),
    good=(
        '{"parts": {"body": "garter"}, '
        '"gauge": {"stitches": 20, "rows": 40, "over_cm": 10, "in": "garter"}, '
        '"size": {"width_cm": 70, "length_cm": 90}}'
    ),
)
def part_of_wrong_kind(attempt: Attempt) -> Iterator[Finding]:
    """A part of the wrong kind.

    A cast-on is cast on and a bind-off binds off; borders, selvedges and bodies are worked in rows.
    """
    for met in attempt.met(WrongKind):
        yield Finding(
            "part-of-wrong-kind",
            "error",
            f"“{met.slug}” is a {met.kind} and cannot be worked as the {_place(met.pointer)}.",
            f"Name a component that can be the {_place(met.pointer)}.",
            pointer=met.pointer,
        )


def _place(pointer: str) -> str:
    return pointer.split("/")[2].replace("_", "-")
