"""Sound patterns, and the mutations that make one slip each in them: the slips that writers and compositors make.

The patterns are the rows of the starters at a count that suits them, in five forms (bare, with the cast-on, with some
or all counts printed, repeated), and invented ones. Every mutation changes one place and nothing else, and works on the
printed text alone, so that reading is part of what is tried.
"""

from __future__ import annotations

import re
from collections.abc import Callable, Iterator, Mapping, Sequence
from random import Random

from counterpane.craft.checking import examine
from counterpane.craft.stitches import Vocabulary

WIDEST = 90
INVENTED = (
    "Cast on 5 sts.\nRow 1 (RS): K2, yo, k to last 2 sts, yo, k2. (7 sts)\nRow 2: Purl. (7 sts)\n"
    "Row 3: K2, yo, k to last 2 sts, yo, k2. (9 sts)\nRow 4: Purl. (9 sts)\n",
    "Cast on 41 sts.\nRow 1: K1, ssk, k to last 3 sts, k2tog, k1. (39 sts)\nRow 2: Purl.\n"
    "Rep rows 1-2 until 5 sts remain.\n",
    "Cast on 26 sts.\nRow 1 (RS): K1, *yo, k2, sl 1, k2tog, psso, k2, yo, k1; rep from * to last st, k1. (26 sts)\n"
    "Row 2: Purl. (26 sts)\n"
    "Row 3: K1, *k1, yo, k1, sl 1, k2tog, psso, k1, yo, k2; rep from * to last st, k1. (26 sts)\n"
    "Row 4: Purl. (26 sts)\n",
    "Cast on 30 sts.\nRow 1: *[K1, p1] twice, k2; rep from * to end.\nRow 2: *P2, [k1, p1] twice; rep from * to end.\n"
    "Row 3: K30. (30 sts)\nRep rows 1-3.\n",
    "Cast on 17 sts.\nRow 1: K6, yo, k2tog, k9. (17 sts)\nRow 2: K9, p2, k6. (17 sts)\n"
    "Row 3: Bind off 3 sts, k to end. (14 sts)\nRow 4: K14.\n",
    "Cast on 24 sts.\nRow 1: *K3, p3; rep from * to end. (24 sts)\nRow 2: *K3, (k1, yo, k1) into next st, k2; "
    "rep from * to end. (32 sts)\nRow 3: *P2, p3tog, p3; rep from * to end. (24 sts)\n",
    "Cast on 28 sts.\nRow 1: K2, *yo, k2tog, [k1, p1] 2 times; rep from * to last 2 sts, k2.\n"
    "Row 2: K2, p to last 2 sts, k2.\nRow 3: K2, *[p1, k1] 2 times, ssk, yo; rep from * to last 2 sts, k2.\n"
    "Row 4: K2, p to last 2 sts, k2. (28 sts)\n",
)
_ROW = re.compile(r"^((?:Row|Round|Rnd)s? [^:]+: )(.*?)((?: \(\d+ sts\))?)$", re.MULTILINE)
_EXCHANGES = {"k2tog": "k3tog", "k3tog": "k2tog", "ssk": "k1", "p2tog": "p3tog", "p3tog": "p2tog", "skp": "k2"}
Mutation = Callable[[str, Random], str | None]


def sound_patterns(rows: Mapping[str, str], vocabulary: Vocabulary) -> list[str]:
    """Return the patterns made of rows by name, and the invented ones."""
    forms = enumerate(sorted(rows.items()))
    made = (_pattern(text, form, vocabulary) for form, (_, text) in forms)
    return [*INVENTED, *(pattern for pattern in made if pattern)]


def _pattern(rows: str, form: int, vocabulary: Vocabulary) -> str | None:
    """Put a cast-on before rows and counts behind them; None where no count up to `WIDEST` suits."""
    starts = examine(rows, vocabulary).chain.starts
    if not starts:
        return None
    start = starts[0]
    count = start.least + start.of * (max(0, WIDEST // 2 - start.least) // start.of) if start.of else start.least
    if not 0 < count <= WIDEST:
        return None
    text = f"Cast on {count} sts.\n{rows.strip()}\n"
    if form % 5 in (2, 3):
        text = _counted(text, examine(text, vocabulary).followed, last_only=form % 5 == 2)
    drift = examine(text, vocabulary).chain.drift
    return f"{text}Rep these rows.\n" if form % 5 == 4 and drift == 0 else text


def _counted(text: str, followed: Sequence, last_only: bool) -> str:
    """Print the counts behind the rows that have a line of their own."""
    lines = text.split("\n")
    for row in followed[-1:] if last_only else followed:
        at = row.row.place.line - 1
        alone = sum(other.row.place.line == at + 1 for other in followed) == 1
        if alone and row.after is not None and lines[at].endswith(".") and _ROW.match(lines[at]):
            lines[at] += f" ({row.after} sts)"
    return "\n".join(lines)


def _row(text: str, random: Random) -> re.Match[str] | None:
    found = list(_ROW.finditer(text))
    return random.choice(found) if found else None


def _body(change: Callable[[str, Random], str | None]) -> Mutation:
    """Turn a change of a row's words into one of the text."""

    def mutate(text: str, random: Random) -> str | None:
        row = _row(text, random)
        words = change(row.group(2), random) if row else None
        return None if row is None or words is None else text[: row.start(2)] + words + text[row.end(2) :]

    return mutate


def _replaced(words: str, pattern: str, random: Random, new: Callable[[re.Match[str]], str]) -> str | None:
    found = list(re.finditer(pattern, words))
    match = random.choice(found) if found else None
    return words[: match.start()] + new(match) + words[match.end() :] if match else None


def number_by_one(words: str, random: Random) -> str | None:
    """Change a number by one."""
    step = random.choice((1, -1))
    return _replaced(words, r"\d+", random, lambda match: str(max(1, int(match.group()) + step)))


def stitch_left_out(words: str, random: Random) -> str | None:
    """Leave out a stitch of a list."""
    return _replaced(words, r"(?<=, )[^,;*\[\]()]+, ", random, lambda match: "")


def stitch_doubled(words: str, random: Random) -> str | None:
    """Print a stitch of a list twice."""
    return _replaced(words, r"(?<=, )[^,;*\[\]()]+, ", random, lambda match: match.group() * 2)


def star_late(words: str, random: Random) -> str | None:
    """Print a star behind the stitch that it stands before."""
    return _replaced(words, r"\*([^,;*]+, )", random, lambda match: match.group(1) + "*")


def star_early(words: str, random: Random) -> str | None:
    """Print a star before the stitch that it stands behind."""
    return _replaced(words, r"([^,;*\[\]()]+, )\*", random, lambda match: "*" + match.group(1))


def star_left_out(words: str, random: Random) -> str | None:
    """Leave out the star before a stitch."""
    return _replaced(words, r"\*(?=\w)", random, lambda match: "")


def bracket_left_out(words: str, random: Random) -> str | None:
    """Leave out a bracket."""
    return _replaced(words, r"[\[\]()]", random, lambda match: "")


def decrease_exchanged(words: str, random: Random) -> str | None:
    """Exchange a decrease for its neighbour."""
    pattern = r"\b(?:" + "|".join(_EXCHANGES) + r")\b"
    return _replaced(words, pattern, random, lambda match: _EXCHANGES[match.group()])


def yarn_over_put_in(words: str, random: Random) -> str | None:
    """Put a yarn-over into a list."""
    return _replaced(words, r", (?=[^,;]+[,;])", random, lambda match: ", yo, ")


def letters_swapped(words: str, random: Random) -> str | None:
    """Swap two letters of a word."""
    return _replaced(words, r"\b[a-z]\w*[a-z]{2}\b", random, lambda match: match.group()[:-2] + match.group()[:-3:-1])


def row_left_out(text: str, random: Random) -> str | None:
    """Leave out a row with its line."""
    row = _row(text, random)
    return text[: row.start()] + text[row.end() + 1 :] if row and len(_ROW.findall(text)) > 1 else None


def rows_swapped(text: str, random: Random) -> str | None:
    """Exchange the words of two rows that follow each other; their labels and counts stay."""
    found = list(_ROW.finditer(text))
    if len(found) < 2:
        return None
    at = random.randrange(len(found) - 1)
    one, other = found[at], found[at + 1]
    between = text[one.end(2) : other.start(2)]
    return text[: one.start(2)] + other.group(2) + between + one.group(2) + text[other.end(2) :]


def cast_on_changed(text: str, random: Random) -> str | None:
    """Change the cast-on by one to three."""
    step = random.choice((-3, -2, -1, 1, 2, 3))
    return re.sub(r"(?<=Cast on )\d+", lambda match: str(max(1, int(match.group()) + step)), text, count=1)


def count_changed(text: str, random: Random) -> str | None:
    """Change a printed count by one or two."""
    step = random.choice((-2, -1, 1, 2))
    return _replaced(text, r"(?<=\()\d+(?= sts\))", random, lambda match: str(max(1, int(match.group()) + step)))


MUTATIONS: Mapping[str, Mutation] = {
    "a number changed by one": _body(number_by_one),
    "a stitch left out": _body(stitch_left_out),
    "a stitch doubled": _body(stitch_doubled),
    "a star one stitch too late": _body(star_late),
    "a star one stitch too early": _body(star_early),
    "a star left out": _body(star_left_out),
    "a bracket left out": _body(bracket_left_out),
    "a decrease exchanged": _body(decrease_exchanged),
    "a yarn-over put in": _body(yarn_over_put_in),
    "two letters swapped": _body(letters_swapped),
    "a row left out": row_left_out,
    "two rows swapped": rows_swapped,
    "the cast-on changed": cast_on_changed,
    "a printed count changed": count_changed,
}


def mutated(patterns: Sequence[str], number: int, seed: int) -> Iterator[tuple[str, str]]:
    """Yield so many mutated patterns with the name of their mutation, the mutations in turn."""
    random = Random(seed)
    names = list(MUTATIONS)
    made = 0
    while made < number:
        name = names[made % len(names)]
        before = random.choice(patterns)
        after = MUTATIONS[name](before, random)
        if after is not None and after != before:
            made += 1
            yield name, after
