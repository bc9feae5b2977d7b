"""What a rule found, put to the designer as one polite sentence."""

from __future__ import annotations

import re
from collections.abc import Sequence

from counterpane.craft.findings import Severity

_SENTENCE = re.compile(r"(?<=[a-z0-9”)])\.\s+(?=[A-Z“])")
_LOWERED = re.compile(r"^(?:A|An|At|Its?|No|Only|The|Their|They|This|These|Those|There|Where|It’s|Nothing)\b")
_TOLD = re.compile(r"(?:A|An|Both|Each|It|One|Rounds?|Rows?|Some|The|There|These|They|This)\b")
"""How a hint begins that tells something and asks for nothing."""


def question_of(
    finding: str, hint: str, suggestions: Sequence[str], severity: Severity | None, sizes: Sequence[int] = ()
) -> str:
    """Ask about a finding: what was seen, then what might be meant; empty where nothing was found.

    The numbers of a finding are those of the first of its sizes.
    """
    if not finding:
        return ""
    seen = "; ".join(_joined(_SENTENCE.split(finding.strip().rstrip("."))))
    pause = ";" if ": " in seen else ":"
    if sizes:
        seen = f"In size {sizes[0]}{_alike(sizes[1:])}: {seen}"
    return f"{seen}{pause} {_asked(hint, suggestions, severity)}"


def _alike(sizes: Sequence[int]) -> str:
    """Name the further sizes that a finding is about."""
    if not sizes:
        return ""
    named = ", ".join(map(str, sizes[:-1])) + " and " if len(sizes) > 1 else ""
    return f", and alike in size{'s' if len(sizes) > 1 else ''} {named}{sizes[-1]}"


def _joined(sentences: Sequence[str]) -> list[str]:
    """Return sentences as parts of one: a small word that begins a later one loses its capital."""
    return [sentence if not index else _lowered(sentence) for index, sentence in enumerate(sentences)]


def _lowered(sentence: str) -> str:
    return sentence[:1].lower() + sentence[1:] if _LOWERED.match(sentence) else sentence


def _asked(hint: str, suggestions: Sequence[str], severity: Severity | None) -> str:
    """Return the asking half: a line to agree to, else the next step as a request (as for a line to be added)."""
    rewordings = [each.removesuffix(".") for each in suggestions if "\n" not in each]
    if rewordings and severity != "note":
        readings = " or ".join(f"“{each}”" for each in rewordings)
        return f"should it read {readings}, or is something else meant?"
    first = _SENTENCE.split(hint.strip())[0].partition("; ")[0].rstrip(".")
    if not first:
        return "is that as you mean it?"
    step = first[:1].lower() + first[1:]
    if first.endswith("?"):
        return step
    if _TOLD.match(first):
        return f"{step}; could you look at it?"
    return f"{'would you like to' if severity == 'note' else 'could you'} {step}?"
