"""A needle size that does not say in which scale it is."""

from __future__ import annotations

import re
from collections.abc import Iterator

from counterpane.craft.checking import Examined
from counterpane.craft.checking.wording import at, quoted
from counterpane.craft.findings import Finding, rule
from counterpane.craft.rows.quick import word_of

_SIZE = ("size", r"no\.?", "number")
_NUMBER = re.compile(
    word_of(
        *(rf"{word}\s*\d{{1,2}}\s+(?:\w+[- ]){{0,2}}needles?" for word in _SIZE),
        rf"needles?,?\s*[:,]?\s*(?:{'|'.join(_SIZE)})\s*\d{{1,2}}(?!\d|[./]\d)",
    )
)
_DIGITS = re.compile(r"\d+")
_SCALE = re.compile(word_of(r"mm\b", r"us\b", r"u\.s\.", r"uk\b", r"u\.k\.", r"metric\b", r"old\b") + r"|mm(?<=\dmm)")


@rule(
    "needle-size-unclear",
    family="wording",
    severity="note",
    bad="Needles: size 8 needles.\nCast on 4 sts.\nRow 1: Knit.",
    good="Needles: 5 mm (US 8).\nCast on 4 sts.\nRow 1: Knit.",
    source=(
        "five needle charts of shops and knitters that agree, second-hand: US and old UK numbers meet at 4.5 mm alone"
    ),
)
def needle_size_unclear(examined: Examined) -> Iterator[Finding]:
    """A needle size does not say whose number it is.

    US numbers rise with thickness and old UK numbers fall: US 8 is 5 mm, old UK 8 is 4 mm. Millimetres leave no doubt.
    """
    if "needle" not in examined.text.lower():
        return
    for line in examined.instructions.page.lines:
        named = "needle" in line.text and not _SCALE.search(line.text)
        match = _NUMBER.search(line.text) if named else None
        if match:
            size = _DIGITS.findall(match.group())[0]
            message = f"The needle size {quoted(size)} may be US or old UK."
            yield at(line.place(match.start()), "needle-size-unclear", "note", message, "Give the size in millimetres.")
