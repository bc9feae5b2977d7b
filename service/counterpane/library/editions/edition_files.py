"""The pattern of an edition in each of its forms, with a line that says where to ask whether it was corrected.

The line is no part of what is published: it is added on the way out, since where the library is to be found may change.
"""

from __future__ import annotations

from dataclasses import dataclass, replace

from counterpane.craft.stitches import Terms
from counterpane.library.editions import editions
from counterpane.library.editions.corrections import question_of
from counterpane.library.keeping.objects import json_bytes
from counterpane.library.patterns.pages import PAGES, pictures_for
from counterpane.library.services import Services


@dataclass(frozen=True, slots=True)
class Asked:
    """Which pattern: the recipe, the number of the edition, the terms, and the name of a size or None for the first."""

    slug: str
    number: int
    terms: Terms = "us"
    size: str | None = None


def written(services: Services, asked: Asked, form: str, paper: str = "a4") -> bytes:
    """Return the pattern in a form: text as it was printed, the others laid out; raise NotFound, WrittenOtherwise."""
    kept = editions.find(services, asked.slug, asked.number)
    whole, asks = editions.content_of(services, kept), question_of(services, asked.slug, asked.number, kept.sha256)
    text: str = editions.kept_text(whole, asked.terms, asked.size)["text"]
    if form == "text":
        return f"{text}\n{asks}\n".encode()
    made = editions.written(services, whole, asked.terms, asked.size)
    drawn = pictures_for(made.plan, made.pattern, services.vocabulary, form)
    if form == "json":
        return json_bytes({"pattern": services.as_data(made.pattern, drawn), "text": text, "asks": asks})
    shown = replace(made.pattern, asks=asks)
    if form not in PAGES:
        return services.presses[form](shown, drawn).encode()
    return services.pages[form](shown, drawn, paper)
