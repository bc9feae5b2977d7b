"""What the starters say of their two sides, against what their rows show."""

from __future__ import annotations

from collections.abc import Mapping

from counterpane.craft.component import Component, derive
from counterpane.craft.fabric import reversible
from counterpane.craft.stitches import Vocabulary


def test_the_sides_of_a_starter_are_as_its_rows_show(starters: Mapping[str, Component], vocabulary: Vocabulary) -> None:
    """The same on both sides is said just where the endless texture shows it; edges are left out (common practice)."""
    wrong = []
    for component in starters.values():
        for version in derive(component, vocabulary).versions if component.kind in ("body", "border") else ():
            rows = [row.parts for row in version.rows]
            shown = reversible(rows, vocabulary, [row.side for row in version.rows])
            if shown is not None and (shown == "yes") != (component.reversible == "yes"):
                wrong.append((component.slug, component.reversible, shown))
    assert wrong == []
