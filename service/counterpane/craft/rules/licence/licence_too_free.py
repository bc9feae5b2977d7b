"""A pattern that is to be shared more freely than a part of it allows."""

from __future__ import annotations

from collections.abc import Iterator

from counterpane.craft.findings import Correction, Finding, rule
from counterpane.craft.licensing import LICENCES, Licensed
from counterpane.craft.licensing.verdict import forbidding, verdict


@rule(
    "licence-too-free",
    family="licence",
    severity="error",
    bad='{"licence": "CC-BY-4.0", "parts": [{"title": "Ripple", "creator": "anna", "licence": "CC-BY-SA-4.0"}]}',
    good='{"licence": "CC-BY-SA-4.0", "parts": [{"title": "Ripple", "creator": "anna", "licence": "CC-BY-SA-4.0"}]}',
    source="CC BY 4.0 legal code, section 3(a)(4); CC BY-SA 4.0 legal code, section 3(b)(1)",
)
def licence_too_free(licensed: Licensed) -> Iterator[Finding]:
    """A licence that a part does not allow.

    A maker who asks to be named, or asks that what is made of their rows be shared alike, is owed it by everybody who
    passes the rows on. Rows that are counted for a blanket and put beside others are taken as adapted.
    """
    found = verdict(licensed)
    whole = LICENCES.get(licensed.wanted or "")
    if whole is None or found.licence is None or whole in found.may:
        return
    asking = {use.title: use.licence for use in forbidding(licensed, whole)}
    names = ", ".join(f"{title} ({licence})" for title, licence in asking.items())
    yield Finding(
        "licence-too-free",
        "error",
        f"The pattern is to be shared under {whole.spdx}, which these parts do not allow: {names}.",
        f"Share it under {found.licence.spdx}, or take other parts in their place.",
        pointer="/licence",
        changes=(Correction("/licence", found.licence.spdx, "the freest licence that all parts allow"),),
    )
