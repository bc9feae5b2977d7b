"""A stitch called by another of its names than the style's."""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Iterator

from counterpane.craft.checking.printed import Departure, Printed, noted
from counterpane.craft.counts.wellformed import within
from counterpane.craft.findings import Finding, rule
from counterpane.craft.rows.lexicon import lexicon_of
from counterpane.craft.rows.tree import Place, Work


@rule(
    "style-abbreviation",
    family="style",
    severity="note",
    bad="Cast on 8 sts.\nRow 1: K3, k 2 tog, k3. (7 sts)\nRow 2: Knit.",
    good="Cast on 8 sts.\nRow 1: K3, k2tog, k3. (7 sts)\nRow 2: Knit.",
    source="house",
)
def style_abbreviation(text: Printed) -> Iterator[Finding]:
    """A stitch is called by another of its names than in the house style.

    A stitch with two names is looked up twice, and the list of abbreviations explains only one of them.
    """
    groups: dict[tuple[str, str], list[Departure]] = defaultdict(list)
    for each in _departures(text):
        groups[(each.words.lower(), each.wanted)].append(each)
    for departures in groups.values():
        yield from noted(text, "style-abbreviation", "A stitch is called", departures)


def _departures(text: Printed) -> Iterator[Departure]:
    """Give the names of stitches that the style names otherwise."""
    wanted = text.style.abbreviations
    lexicon = lexicon_of(text.examined.vocabulary)
    keys = _keys(text)
    for clause in text.rows:
        for index, token in enumerate(clause.body):
            key = keys.get(token.place)
            if key is None or key not in wanted:
                continue
            length, meanings = lexicon.names.longest(clause.body, index)
            last = clause.body[index + max(length, 1) - 1]
            words = text.between(token, last)
            if meanings and key in meanings and words and words.lower() != wanted[key].lower():
                capital = words[:1].isupper()
                yield Departure(token.place, words, wanted[key].capitalize() if capital else wanted[key])


def _keys(text: Printed) -> dict[Place, str]:
    """Return the stitch that stands at each place."""
    nodes = (node for row in text.examined.instructions.rows for node in within(row.parts))
    return {node.place: node.stitch for node in nodes if isinstance(node, Work)}
