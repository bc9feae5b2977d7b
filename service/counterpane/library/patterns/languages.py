"""The language that a pattern is asked for in."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Any

from counterpane.library.services import Services
from counterpane.library.values import BadInput


def language_of(services: Services, content: Mapping[str, Any]) -> str:
    """Return the language that a request asks for, "" for English; raise BadInput for one that there is none of."""
    code = content.get("language") or "en"
    if code == "en":
        return ""
    if code not in services.languages:
        known = ", ".join(("en", *services.languages))
        raise BadInput("/language", f"Patterns are not written in {code!r}.", f"Languages are {known}.")
    if content.get("terms") == "uk":
        raise BadInput("/terms", f"UK terms are of English, and the language is {code!r}.", "Leave the terms out.")
    if content.get("words") == "full":
        raise BadInput("/words", f"Full words are of English, and the language is {code!r}.", "Leave the words out.")
    if content.get("sheet") == "designer":
        raise BadInput("/language", "The designer's sheet is in English.", "Leave the language out, or the sheet.")
    return str(code)
