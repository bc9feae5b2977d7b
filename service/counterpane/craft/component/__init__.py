"""Components: the parts of a blanket that are kept, what follows from their rows, and whether they prove."""

from counterpane.craft.component.balance import Balance, Layout
from counterpane.craft.component.content import component_of, content_of
from counterpane.craft.component.derived import Derived, DerivedVersion, derive
from counterpane.craft.component.proof import Problem, prove
from counterpane.craft.component.textured import canonical_textures, may_share, textures
from counterpane.craft.component.values import (
    KINDS,
    Component,
    Example,
    Kind,
    Look,
    Measure,
    MeasuredOpening,
    Note,
    Operation,
    Parameter,
    Provenance,
    Reversible,
    SafetyNotes,
    SlippedEdge,
    Version,
)

__all__ = [
    "KINDS",
    "Balance",
    "Component",
    "Derived",
    "DerivedVersion",
    "Example",
    "Kind",
    "Layout",
    "Look",
    "Measure",
    "MeasuredOpening",
    "Note",
    "Operation",
    "Parameter",
    "Problem",
    "Provenance",
    "Reversible",
    "SafetyNotes",
    "SlippedEdge",
    "Version",
    "canonical_textures",
    "component_of",
    "content_of",
    "derive",
    "may_share",
    "prove",
    "textures",
]
