"""Under which licence a pattern may be shared that is put together of parts under licences of their own.

The three licences of the library by their SPDX names, what each asks of who passes on what was made of it, and the
values that a verdict is made of. Rows that are counted and put beside others are taken as adapted, so that every
condition for adapted material holds; it is the stricter reading. Nothing here is legal advice.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass


@dataclass(frozen=True, slots=True)
class Licence:
    """A licence by its SPDX identifier.

    `credit` tells whether the maker must be named, `alike` whether what is made of the material must be shared under
    the same licence. `source` is the section that says so.
    """

    spdx: str
    name: str
    address: str
    credit: bool
    alike: bool
    source: str


LICENCES: Mapping[str, Licence] = {
    each.spdx: each
    for each in (
        Licence(
            "CC0-1.0",
            "CC0 1.0 Universal",
            "https://creativecommons.org/publicdomain/zero/1.0/",
            credit=False,
            alike=False,
            source="CC0 1.0 legal code, section 2 (waiver)",
        ),
        Licence(
            "CC-BY-4.0",
            "Creative Commons Attribution 4.0 International",
            "https://creativecommons.org/licenses/by/4.0/",
            credit=True,
            alike=False,
            source="CC BY 4.0 legal code, sections 3(a)(1) and 3(a)(4)",
        ),
        Licence(
            "CC-BY-SA-4.0",
            "Creative Commons Attribution-ShareAlike 4.0 International",
            "https://creativecommons.org/licenses/by-sa/4.0/",
            credit=True,
            alike=True,
            source="CC BY-SA 4.0 legal code, sections 3(a)(1) and 3(b)(1)",
        ),
    )
}
"""The licences under which words are kept, the freest first."""

UNNAMED = frozenset({"", "not stated", "unknown", "anonymous"})
"""What stands for a maker whom nobody named; house."""


@dataclass(frozen=True, slots=True)
class Use:
    """A part that a pattern uses: what it is called, and what its maker asks to be said of it.

    `pointer` is its place in the request, `made` what it was made from: notices of those who changed it, in order.
    """

    slug: str
    title: str
    creator: str
    licence: str
    source: str
    notice: str | None = None
    address: str | None = None
    made: tuple[str, ...] = ()
    pointer: str = ""


@dataclass(frozen=True, slots=True)
class Licensed:
    """The parts of a pattern, and the licence under which it is wanted to be shared; None is whichever they allow."""

    uses: tuple[Use, ...]
    wanted: str | None = None


def named(licence: str) -> str:
    """Return how a licence is named in a credit: with its address where it asks for a credit."""
    known = LICENCES.get(licence)
    return f"{licence} ({known.address})" if known and known.credit else licence


def allows(part: Licence, whole: Licence) -> bool:
    """Say whether what is made of material under `part` may be shared under `whole`.

    What must be shared alike goes under its own licence alone. Who must be named may not be lost under a licence that
    names nobody.
    """
    return part.spdx == whole.spdx if part.alike else whole.credit or not part.credit
