"""Spans of numbers and gauges as short texts, such as 60..80 and 21x28: what they look like, and how they are read."""

from __future__ import annotations

import re
from decimal import Decimal

SPAN = r"^[0-9]{1,6}([.][0-9]{1,3})?([.][.][0-9]{1,6}([.][0-9]{1,3})?)?$"
WHOLE_SPAN = r"^[0-9]{1,6}([.][.][0-9]{1,6})?$"
GAUGE = r"^[1-9][0-9]{0,2}([.][0-9]{1,2})?(x[1-9][0-9]{0,2}([.][0-9]{1,2})?)?$"


def span_of(text: str, form: str) -> str | None:
    """Return a number, or two with the smaller first, whichever stood first; None for what is not of the form."""
    if not re.fullmatch(form, text):
        return None
    low, _, high = text.partition("..")
    return f"{high}..{low}" if high and Decimal(low) > Decimal(high) else text


def is_gauge(text: str) -> bool:
    """Say whether a text tells stitches, or stitches and rows, over 10 cm."""
    return re.fullmatch(GAUGE, text) is not None
