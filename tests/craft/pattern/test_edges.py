"""The cast-on and the bind-off in words: what is said of the yarn to keep."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import replace

from counterpane.craft.component import Component
from counterpane.craft.constructions import Part
from counterpane.craft.pattern.edges import bind_off
from craft.pattern.plans import waffle


def test_the_yarn_to_keep_is_rounded_up() -> None:
    """By hand, 151 stitches at 22 to 10 cm are 68.64 cm: 3 widths and 15 are 220.9 cm, 6 widths and 15 are 426.8 cm.

    A yard is 91.44 cm: 2.42 and 4.67 yards.
    """
    plan = waffle()
    assert round(float(plan.sections[-1].cm_width), 2) == 68.64
    assert "a row takes about 2.3 m (2½ yd), and the bind-off up to 4.3 m (5 yd)" in " ".join(
        bind_off(plan, "us").notes
    )


def test_a_cord_says_nothing_of_the_yarn_to_keep(starters: Mapping[str, Component]) -> None:
    """The rules of thumb are of bind-offs worked once over the stitches, and a cord takes more."""
    plain, cord = waffle(), starters["cord-bind-off"]
    assert "Keep yarn for it" in " ".join(bind_off(plain, "us").notes)
    corded = replace(plain, request=replace(plain.request, bind_off=Part(cord)))
    assert "Keep yarn for it" not in " ".join(bind_off(corded, "us").notes)
