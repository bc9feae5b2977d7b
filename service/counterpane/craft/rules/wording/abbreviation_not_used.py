"""An abbreviation that is explained and never used."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterator

from counterpane.craft.checking import Examined
from counterpane.craft.checking.wording import at, quoted
from counterpane.craft.findings import Finding, rule
from counterpane.craft.rows.glossary import words_in


@rule(
    "abbreviation-not-used",
    family="wording",
    severity="note",
    bad="k = knit\np = purl\nssk = slip, slip, knit\n\nCast on 4 sts.\nRow 1: K2, p2.",
    good="k = knit\np = purl\nsts = stitches\n\nCast on 4 sts.\nRow 1: K2, p2.",
)
def abbreviation_not_used(examined: Examined) -> Iterator[Finding]:
    """An abbreviation is explained and never used.

    A list copied from another pattern makes a knitter look for a stitch that does not come, or hides that a row was
    left out.
    """
    page = examined.instructions.page
    if not page.glossary.entries or not examined.rows:
        return
    text = "\n".join(line.text for line in page.lines if line.number not in page.glossary.lines)
    used = words_in(text)
    meant = Counter(word for entry in page.glossary.entries for word in words_in(entry.meaning))
    seen: set[str] = set()
    for entry in page.glossary.entries:
        own = words_in(entry.meaning)
        found = any(name in used or meant[name] > (name in own) or _stands(name, text) for name in entry.names)
        if entry.names and not found and entry.printed not in seen:
            seen.add(entry.printed)
            message = f"{quoted(entry.printed)} is explained here and used nowhere."
            hint = "Leave it out of the list, unless a row that needs it is missing."
            yield at(entry.place, "abbreviation-not-used", "note", message, hint)


def _stands(name: str, text: str) -> bool:
    """Tell whether a sign, or a name of several words, stands in the text."""
    return name.split(" ", maxsplit=1)[0] in text if not name[0].isalnum() else " " in name and name in text
