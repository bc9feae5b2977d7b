"""Counts that all parts share: where they are very many, where there are none, and which parts stand in the way."""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from dataclasses import replace
from itertools import product

import pytest

from counterpane.craft.component import Component, Kind
from counterpane.craft.constructions.fitting import MOST_CLASSES, best, options
from counterpane.craft.constructions.obstacles import Demand
from counterpane.craft.constructions.settling import settle
from counterpane.craft.constructions.sharing import changes_to_share, stuck_pair
from counterpane.craft.counts import Progression
from counterpane.craft.stitches import Vocabulary
from craft.constructions.asking import asked
from craft.textures import body

Starters = Mapping[str, Component]


def ribs(slug: str, kind: Kind, multiples: Iterable[int], plus: int = 0) -> Component:
    """Return a part with a version of one row over a multiple of each number, and so many stitches more."""
    end = f"last {plus} sts, k{plus}" if plus else "end"
    rows = (f"Row 1 (RS): *k{many - 1}, p1; rep from * to {end}." for many in multiples)
    return replace(body(*rows), slug=slug, name=slug, kind=kind)


def test_of_very_many_shared_counts_the_nearest_is_kept(starters: Starters, vocabulary: Vocabulary) -> None:
    """Two bands of 65 versions, each over multiples of another prime: 4225 classes, and the nearest of all is found."""
    primes = [number for number in range(2, 800) if all(number % other for other in range(2, number))]
    low, high = primes[2:67], primes[67:132]
    bands = {"low": ribs("low", "body", low), "high": ribs("high", "body", high)}
    request = asked({**starters, **bands}, vocabulary, ["low", "high"], 5_000, sides=None, bottom=None, top=None)
    settled = settle(request, vocabulary)
    found = options(settled)
    assert len(low) * len(high) > MOST_CLASSES == len(found)
    wholes = [one * other for one, other in product(low, high)]
    tried = {max(1, settled.target // whole + more) * whole for whole in wholes for more in (0, 1)}
    assert best(settled, found)[0] == min(tried, key=lambda count: (abs(count - settled.target), -count))


@pytest.mark.parametrize(("versions", "offered"), [(1, True), (33, False)])
def test_sides_are_not_tried_where_mixtures_are_very_many(
    versions: int, offered: bool, starters: Starters, vocabulary: Vocabulary
) -> None:
    """Bands in threes and one over an end border in threes share a count once a side has a stitch more.

    Of two bands with 33 versions each there are 1089 mixtures, which are not gone through.
    """
    threes = [3 * many for many in range(2, 2 + versions)]
    parts = {
        "one": ribs("one", "body", threes, 1),
        "other": ribs("other", "body", threes, 1),
        "end": ribs("end", "border", [3]),
    }
    ends = {"component": "end", "rows": 4}
    sides = {"component": "garter-border", "stitches": 6}
    request = asked({**starters, **parts}, vocabulary, ["one", "other"], bottom=ends, top=None, sides=sides)
    settled = settle(request, vocabulary)
    changes = [each.value for each in changes_to_share(settled) if each.pointer == "/parts/sides/stitches"]
    assert options(settled) == ()
    assert changes[:1] == ([7] if offered else [])


def test_three_parts_may_share_no_count_though_any_two_do() -> None:
    """By hand, in fours: 0 or 1, 1 or 2, and 2 or 0 more meet in pairs at 1, 2 and 0, and never all three."""
    demands = [
        Demand(name, name, tuple(Progression(4, rest, 4 + rest) for rest in rests))
        for name, rests in (("bottom", (0, 1)), ("body", (1, 2)), ("top", (2, 0)))
    ]
    assert stuck_pair(tuple(demands)) is None
    apart = Demand("edge", "edge", (Progression(4, 3, 7),))
    assert stuck_pair((demands[0], apart)) == (demands[0], apart)
