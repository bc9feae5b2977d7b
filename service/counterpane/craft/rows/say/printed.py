"""What is printed beside the stitches of a row and is not in its tree: yarns, notes in brackets, names of fabrics."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field

from counterpane.craft.rows.tree import Place


@dataclass(frozen=True, slots=True)
class Fabric:
    """The name of a fabric as printed; `whole` says that it is a sentence of its own ("work sts as they appear")."""

    words: str
    whole: bool = False


@dataclass(frozen=True, slots=True)
class Printed:
    """Words to be said before and after the nodes at some places, and the fabrics named at others."""

    before: Mapping[Place, str] = field(default_factory=dict)
    after: Mapping[Place, str] = field(default_factory=dict)
    fabrics: Mapping[Place, Fabric] = field(default_factory=dict)


NOTHING = Printed()
