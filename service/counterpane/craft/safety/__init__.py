"""What is known of a piece and of the child it is for, and what a safety rule says of it.

Every input may be not known (None), which is never the same as none or zero. Reading inputs from JSON is not done here.
"""

from __future__ import annotations

from counterpane.craft.safety.attachments import Attachment
from counterpane.craft.safety.fibres import Fibre
from counterpane.craft.safety.inputs import Chemistry, SafetyInputs
from counterpane.craft.safety.measured import MEASURABLE, Measurable, Measurement
from counterpane.craft.safety.profiles import Held, Item, Profile, hold
from counterpane.craft.safety.speaking import SafetyFinding, speak
from counterpane.craft.safety.washing import Wash
from counterpane.craft.safety.words import (
    AGE_BANDS,
    CORDS,
    FEATURES,
    HARD,
    LABEL_FIELDS,
    MARKETS,
    USES,
    AgeBand,
    Basis,
    Feature,
    LabelField,
    Market,
    Use,
    band_of,
    in_figures,
    kind_of,
)

__all__ = [
    "AGE_BANDS",
    "CORDS",
    "FEATURES",
    "HARD",
    "LABEL_FIELDS",
    "MARKETS",
    "MEASURABLE",
    "USES",
    "AgeBand",
    "Attachment",
    "Basis",
    "Chemistry",
    "Feature",
    "Fibre",
    "Held",
    "Item",
    "LabelField",
    "Market",
    "Measurable",
    "Measurement",
    "Profile",
    "SafetyFinding",
    "SafetyInputs",
    "Use",
    "Wash",
    "band_of",
    "hold",
    "in_figures",
    "kind_of",
    "speak",
]
