"""An abbreviation that the list of abbreviations leaves out."""

from __future__ import annotations

import re
from collections.abc import Iterator

from counterpane.craft.checking import Examined
from counterpane.craft.checking.runs import given_line, lines_of_rows
from counterpane.craft.checking.wording import quoted
from counterpane.craft.findings import Finding, rule
from counterpane.craft.rows.glossary import Entry, Glossary, short_words, used_in, usual_meaning, usual_spelling
from counterpane.craft.stitches import Vocabulary

_TOGETHER = re.compile(r"([kp])\d(tog)(?:-?(tbl))?")
_SAME = {"st": "sts", "sts": "st", "rnd": "rnds", "rnds": "rnd", "pat": "patt", "patt": "pat"}


@rule(
    "abbreviation-not-explained",
    family="wording",
    severity="warning",
    bad="Abbreviations: k = knit; p = purl.\nCast on 9 sts.\nRow 1: K1, k2tog, p6.",
    good="Abbreviations: k = knit; p = purl; k2tog = knit 2 stitches together.\nCast on 9 sts.\nRow 1: K1, k2tog, p6.",
    source="abbreviations and special stitches are in four published checklists of what a pattern holds",
)
def abbreviation_not_explained(examined: Examined) -> Iterator[Finding]:
    """An abbreviation is not in the list of abbreviations.

    A knitter who meets it looks it up in the list and finds nothing. A list of special abbreviations leaves out the
    plain ones on purpose: there only cables, twists and bobbles are looked for.
    """
    glossary = examined.instructions.page.glossary
    if not (glossary.listed and glossary.entries):
        return
    explained = _explained(glossary, examined.vocabulary)
    used = used_in(lines_of_rows(examined), examined.vocabulary)
    for name, place in sorted(used.items(), key=lambda item: item[1]):
        if name in explained or _is_composed(name, explained):
            continue
        if not glossary.whole and not _is_special(name, examined.vocabulary):
            continue
        message = f"{quoted(usual_spelling(name))} on line {place.line} is not in the list of abbreviations."
        yield _finding(examined, glossary.entries[-1], name, message)


def _explained(glossary: Glossary, vocabulary: Vocabulary) -> frozenset[str]:
    """Return the abbreviations explained, also as part of a longer name ("sl 1 pwise" explains sl)."""
    parts = {word for name in glossary.names for part in name.split() for word in short_words(part, vocabulary)}
    whole = glossary.names | parts
    return frozenset(whole | {_SAME[name] for name in whole if name in _SAME})


def _is_composed(name: str, explained: frozenset[str]) -> bool:
    """Tell whether k and tog, which are explained, explain k2tog."""
    match = _TOGETHER.fullmatch(name)
    return match is not None and {part for part in match.groups() if part} <= explained


def _is_special(name: str, vocabulary: Vocabulary) -> bool:
    stitches = [vocabulary[key] for key in vocabulary.by_name.get(name, ())]
    return any(stitch.key == "mb" or (stitch.uses > 1 and stitch.makes == stitch.uses) for stitch in stitches)


def _finding(examined: Examined, last: Entry, name: str, message: str) -> Finding:
    """Put the finding at the end of the list, where the explanation belongs, with the list gone on."""
    glossary = examined.instructions.page.glossary
    number = last.place.line
    while number + 1 in glossary.lines:
        number += 1
    meaning = usual_meaning(name, examined.vocabulary, examined.instructions.terms)
    line = given_line(examined, number)
    corrections = (_continued(examined, last, number, usual_spelling(name), meaning),) if meaning else ()
    hint = (
        f"Add it to the list, as “{usual_spelling(name)}: {meaning}”." if meaning else "Say in the list what it means."
    )
    column = len(line.rstrip()) + 1
    return Finding("abbreviation-not-explained", "warning", message, hint, number, column, corrections=corrections)


def _continued(examined: Examined, last: Entry, number: int, name: str, meaning: str) -> str:
    """Return the last line of the list with the new explanation, in the list's own style."""
    line = given_line(examined, number)
    on_line = [entry for entry in examined.instructions.page.glossary.entries if entry.place.line == number]
    before = line[: last.place.column - 1] if on_line else ""
    if len(on_line) > 1 or before.strip(" -•*>"):
        stop = "." if line.rstrip().endswith(".") else ""
        sign = ";" if ";" in line or len(on_line) < 2 else ","
        return f"{line.rstrip().removesuffix('.')}{sign} {name}{last.delimiter}{meaning}{stop}"
    wide = last.delimiter.isspace() and len(last.delimiter) > 1
    head = f"{name}  ".ljust(len(last.printed) + len(last.delimiter)) if wide else f"{name}{last.delimiter}"
    return f"{line}\n{before}{head}{meaning}"
