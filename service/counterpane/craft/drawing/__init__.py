"""Pictures of a plan as SVG: pure functions from what was worked out to a text.

Shapes, hatchings and words tell things apart, never a colour alone. Every picture has a title and says in words what it
shows. What a part looks like on a page is `press`; nothing is drawn here that the plan does not hold.
"""

from __future__ import annotations

from dataclasses import dataclass
from typing import Literal
from xml.etree import ElementTree

from counterpane.craft.drawing.chart import Lettered


@dataclass(frozen=True, slots=True)
class Picture:
    """An SVG drawing with the name that stands under it.

    `lines` say the same in sentences and `charts` in letters with their `key`, for a page that shows no picture.
    """

    name: str
    svg: str
    kind: Literal["schematic", "chart", "fabric"] = "schematic"
    lines: tuple[str, ...] = ()
    charts: tuple[Lettered, ...] = ()
    key: tuple[tuple[str, str], ...] = ()

    @property
    def words(self) -> str:
        """What the picture shows, for those who do not see it."""
        return ElementTree.fromstring(self.svg).findtext("{*}desc") or self.name

    @property
    def size(self) -> tuple[str, str]:
        """Width and height in its own units, as decimal text."""
        drawn = ElementTree.fromstring(self.svg)
        return drawn.get("width", "0"), drawn.get("height", "0")
