"""What the law of a market wants on the label of a blanket that is sold; general information, no legal advice."""

from __future__ import annotations

from collections.abc import Mapping

from counterpane.craft.safety.words import LabelField, Market

FIELDS: Mapping[LabelField, str] = {
    "fibre": "the fibres and their shares",
    "maker": "the maker's name and address",
    "batch": "a batch or type mark",
    "origin": "the country of origin",
    "tracking": "a permanent tracking mark (maker, place, date, batch)",
    "certificate": "a children's product certificate",
    "bilingual": "English and French, each fibre of 5 per cent or more",
    "care": "how to wash it",
    "infant-class": "the mark for infant goods with the number of the standard",
}
"""What each field is, in words."""

WANTED: Mapping[Market, tuple[LabelField, ...]] = {
    "EU": ("fibre", "maker", "batch"),
    "NL": ("fibre", "maker", "batch"),
    "UK": ("fibre", "maker", "batch"),
    "US": ("fibre", "origin", "maker", "tracking", "certificate"),
    "CA": ("fibre", "maker", "bilingual"),
    "AU": ("care",),
    "CN": ("infant-class",),
}
"""By market: Regulations (EU) 1007/2011 and 2023/988; SI 2012/1102 and the General Product Safety Regulations 2005;
15 USC 2063(a)(5), 16 CFR 300 and 303; C.R.C. c. 1551; Consumer Goods (Care Labelling) Information Standard 2023;
GB 31701-2015. Read in part at first hand, in November 2026. No market is on record that stands not here."""
