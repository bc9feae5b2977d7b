"""A swatch of each fabric of a plan as JSON values: its counts, its rows as a text of their own, and its steps."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Any

from counterpane.craft.constructions.swatching import LEAST_CM, Swatch, swatches
from counterpane.craft.pattern.swatches import swatch_words
from counterpane.craft.stitches import Terms, Vocabulary
from counterpane.library.plans.bench import Bench
from counterpane.library.plans.plan_proofs import lines_of
from counterpane.library.plans.plan_swatches import no_swatch_json, swatch_json

Answer = dict[str, Any]
BASIS = f"At least {LEAST_CM} cm of whole repeats with the edges of the blanket; common practice, no source."


def write_swatches(content: Mapping[str, Any], bench: Bench) -> Answer:
    """Return the swatches of a plan request with the terms to write in; raises what planning raises."""
    request = {name: value for name, value in content.items() if name != "terms"}
    terms: Terms = content.get("terms") or "us"
    found = swatches(bench.made(request), bench.vocabulary)
    told = [_told(swatch, bench.vocabulary, terms) for swatch in found.made]
    missing = [no_swatch_json(each, terms) for each in found.missing]
    return {"terms": terms, "swatches": told, "no_swatch": missing, "basis": BASIS}


def _told(swatch: Swatch, vocabulary: Vocabulary, terms: Terms) -> Answer:
    words = swatch_words(swatch, vocabulary, terms)
    text = "\n".join(lines_of(swatch.piece, vocabulary, terms)) + "\n"
    return swatch_json(swatch) | {"name": words.name, "text": text, "steps": list(words.steps)}
