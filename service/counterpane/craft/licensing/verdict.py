"""The verdict: the freest licence under which a pattern may be shared, which parts decide it, and what must be said."""

from __future__ import annotations

from dataclasses import dataclass

from counterpane.craft.licensing import LICENCES, Licence, Licensed, Use, allows

HERE = "Its rows are counted and put beside the other parts for this blanket."
"""What is changed of each part here: CC BY 4.0, section 3(a)(1)(B), asks for it."""


@dataclass(frozen=True, slots=True)
class Verdict:
    """What the licences of the parts allow.

    `licence` is the freest under which the whole may be shared, and `may` are all of them; both are empty where the
    licence of a part is none of those that are known. `because` are the parts that rule out a freer one.
    """

    licence: Licence | None
    may: tuple[Licence, ...]
    because: tuple[Use, ...]
    unknown: tuple[Use, ...]


def verdict(licensed: Licensed) -> Verdict:
    """Work out under which licences the whole may be shared; what is not known is never taken as free."""
    unknown = tuple(use for use in licensed.uses if use.licence not in LICENCES)
    if unknown:
        return Verdict(None, (), (), unknown)
    may = tuple(whole for whole in LICENCES.values() if not forbidding(licensed, whole))
    freest = may[0]
    freer = tuple(whole for whole in LICENCES.values() if whole not in may)
    because = tuple(use for use in licensed.uses if any(not allows(LICENCES[use.licence], each) for each in freer))
    return Verdict(freest, may, because, ())


def forbidding(licensed: Licensed, whole: Licence) -> tuple[Use, ...]:
    """Return the parts that do not let the whole be shared under a licence; unknown ones among them."""
    return tuple(
        use for use in licensed.uses if use.licence not in LICENCES or not allows(LICENCES[use.licence], whole)
    )


def credit_line(use: Use) -> str:
    """Return what CC BY 4.0, section 3(a)(1), asks to be kept with a part, in one line; the same is said under CC0."""
    known = LICENCES.get(use.licence)
    licence = f"{known.name} ({use.licence}, {known.address})" if known else use.licence
    told = (
        f"“{use.title}” by {use.creator}",
        use.notice,
        f"from: {use.source}",
        use.address,
        f"licence: {licence}",
        *(f"changed: {each}" for each in use.made),
        f"{HERE[:1].lower()}{HERE[1:-1]}",
    )
    return "; ".join(part for part in told if part) + "."


def sharing_line(found: Verdict) -> str:
    """Return the sentence that says under which licence the pattern may be shared, and which parts ask for it."""
    if found.licence is None:
        names = ", ".join(use.title for use in found.unknown)
        return f"Under which licence this pattern may be shared is not known: ask those who made {names}."
    named = f"{found.licence.name} ({found.licence.spdx}, {found.licence.address})"
    if not found.because:
        return f"The words of all parts are free of conditions: this pattern may be shared under {named} or any other."
    names = ", ".join(dict.fromkeys(use.title for use in found.because))
    alike = "and under no other licence that is kept here" if found.licence.alike else "with the credits above kept"
    return f"This pattern may be shared under {named}, {alike}, because of {names}."
