"""A stitch that is abbreviated here and spelt out there."""

from __future__ import annotations

import re
from collections import defaultdict
from collections.abc import Iterator, Mapping, Sequence
from functools import lru_cache

from counterpane.craft.checking import Examined
from counterpane.craft.checking.runs import lines_of_rows
from counterpane.craft.checking.wording import at, quoted
from counterpane.craft.findings import Finding, rule
from counterpane.craft.rows.lexicon import lexicon_of
from counterpane.craft.rows.tree import Place
from counterpane.craft.rows.words import Line, tokens
from counterpane.craft.stitches import Vocabulary

_WORD = re.compile(r"[a-z]+")
LONGEST_ABBREVIATION = 3  # Letters of a word that may be an abbreviation; house.
_PLAIN = frozenset({"k", "p", "sl", "patt", "wyif", "wyib"})


@rule(
    "stitch-worded-twice",
    family="wording",
    severity="note",
    bad=(
        "Gauge: 20 sts and 40 rows = 10 cm in garter stitch.\nNeedles: 4 mm.\nCast on 6 sts.\n"
        "Row 1 (RS): Yo, k2tog, k4.\nRow 2: Yo, knit 2 together, k4.\nBind off."
    ),
    good=(
        "Gauge: 20 sts and 40 rows = 10 cm in garter stitch.\nNeedles: 4 mm.\nCast on 6 sts.\n"
        "Row 1 (RS): Yo, k2tog, k4.\nRow 2: Yo, k2tog, k4.\nBind off."
    ),
)
def stitch_worded_twice(examined: Examined) -> Iterator[Finding]:
    """A stitch is abbreviated in one row and spelt out in another.

    A reader wonders whether two stitches are meant. Knit, purl and slip are left alone. It is asked of a whole pattern.
    """
    if not examined.instructions.page.furnished:
        return
    lines, vocabulary = lines_of_rows(examined), examined.vocabulary
    words = _words_of_names(vocabulary)
    wordy = [line for line in lines if len(words.intersection(_WORD.findall(line.text))) > 1]
    if not any(_is_spelt(form) for forms in _forms(wordy, vocabulary).values() for form in forms):
        return
    for forms in _forms(lines, vocabulary).values():
        short = [place for form, place in forms.items() if " " not in form]
        spelt = [(place, form) for form, place in forms.items() if _is_spelt(form)]
        if short and spelt:
            place, form = min(spelt)
            abbreviated = next(form for form in forms if " " not in form)
            message = f"{quoted(form)} is {quoted(abbreviated)} on line {min(short).line}."
            yield at(
                place,
                "stitch-worded-twice",
                "note",
                message,
                f"Write {quoted(abbreviated)} throughout, or spell all out.",
            )


@lru_cache(maxsize=4)
def _words_of_names(vocabulary: Vocabulary) -> frozenset[str]:
    """Return the words of which stitches that are spelt out have two at least."""
    words = {word for name in vocabulary.by_name for word in _WORD.findall(name)}
    return frozenset(word for word in words if len(word) > LONGEST_ABBREVIATION)


def _is_spelt(form: str) -> bool:
    """Tell words from an abbreviation: "knit 2 together", not "k2 tog"."""
    return sum(len(word) > LONGEST_ABBREVIATION for word in form.split()) > 1


def _forms(lines: Sequence[Line], vocabulary: Vocabulary) -> Mapping[str, dict[str, Place]]:
    """Return the spellings of each stitch in lines of rows, with the first place of each."""
    out: dict[str, dict[str, Place]] = defaultdict(dict)
    names = lexicon_of(vocabulary).names
    for line in lines:
        run = tokens(line)
        at_token = 0
        while at_token < len(run):
            length, keys = names.longest(run, at_token)
            if keys and len(keys) == 1 and keys[0] not in _PLAIN:
                form = " ".join(token.norm for token in run[at_token : at_token + length])
                out[keys[0]].setdefault(form, run[at_token].place)
            at_token += max(1, length)
    return out
