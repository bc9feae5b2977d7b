"""The swatches of a plan as JSON values: the counts of each, as every plan has them."""

from __future__ import annotations

from typing import Any

from counterpane.craft.constructions.swatching import NoSwatch, Swatch
from counterpane.craft.pattern.swatches import no_swatch_words
from counterpane.craft.stitches import Terms
from counterpane.library.plans.plan_answers import tenths


def swatch_json(swatch: Swatch) -> dict[str, Any]:
    """Return the counts of a swatch; "in" is null for a part in words, `gauge_borrowed` says that they are a guess."""
    piece = swatch.piece
    return {
        "in": swatch.part.component.slug or None,
        "places": list(swatch.places),
        "cast_on": piece.counts.cast_on,
        "repeats": piece.counts.repeats[0],
        "rows": piece.sections[0].rows,
        "width_cm": tenths(piece.width_cm),
        "length_cm": tenths(piece.length_cm),
        "narrow": swatch.narrow,
        "gauge_borrowed": swatch.borrowed,
        "stitches_total": piece.stitches_total,
    }


def no_swatch_json(missing: NoSwatch, terms: Terms = "us") -> dict[str, Any]:
    """Return why a fabric has no swatch and what to do instead; "in" is null for a part in words."""
    words = no_swatch_words(missing, terms)
    slug = missing.part.component.slug or None
    return {"in": slug, "places": list(missing.places), "name": words.name, "steps": list(words.steps)}
