"""Fuzz the check of a text by hand: no uncaught exception, and the time of each kind of input per 64 kB.

    python tests/benchmarks/fuzz_checks.py [MINUTES] [SEED]

Prints, for each kind of input, how many were tried, the median and the slowest in milliseconds per 64 kB, and the
beginning of the slowest; every exception with the input that raised it. Exits by whether there was one.
Times are ratios within the run: processor time beside that of a fixed piece of work, at the speed at which this takes
`REFERENCE`, since a machine with other work is twice as slow for seconds or minutes. At the end the inputs over the
limit are tried four times more and count by their least time. Inputs under 16 kB count as 16 kB, since what a short
text costs says nothing of a long one. A text in sizes counts once for each of them, since each is checked for itself.
Beside that it counts the inputs over the limit where a text in sizes counts once, and those over it for each 64 kB
begun, which is what somebody waits for; and it tells the slowest and those over the limit by the clock of this machine.
"""

from __future__ import annotations

import math
import random
import sys
import time
import traceback
from collections.abc import Callable, Mapping, Sequence
from statistics import median
from typing import NamedTuple, TypeVar

from counterpane.collecting import collect_seldom
from counterpane.craft.stitches import Vocabulary
from counterpane.library.texts.checks import check_text
from counterpane.seeding import load_vocabulary

Answer = TypeVar("Answer")
WHOLE, LEAST = 65_536, 16_384
LIMIT, TRIES = 250, 4
REFERENCE = 5.0  # Milliseconds that a machine of 2026 without other work takes for it; house figure.
SIGNS = list("*()[]{}.,;:-–—=+&/'\"“”’†‡#_~^|\\ \t\n\r\u2028\u00a0\u200b½¼éß\ufeff")
WORDS = (
    "k p k2 p3 k2tog ssk yo sl 1 psso knit purl rep from * to end last sts st times twice more row rows 0 1 2 3 12 99 "
    "(RS) (WS) cast on bind off into next turn pm sm rm marker cn hold in front back work patt as every foll alt wyif "
    "make 1 needle round rnd repeat until remain cm multiple of plus accept treat row-runs-short: note skq zork inc "
    "[ ] ( ) , ; . : \n \n\nRow 1: Rows 1-4: Size S (M, L) 10 (12, 14) st gauge k1b c4f"
).split(" ")
PROSE = (
    "the a this work piece edge corner blanket knit purl until it measures cm from beginning row rows side right wrong "
    "stitches markers slip them as you come to and then with yarn needle size gauge is for of on in continue border "
    "every other pattern Note gently wash cool dry flat baby sew ends 4 12 60 (see Change needles note: Materials"
).split(" ")
DOUBTFUL = (
    "Row {}: *K2, yo, k2tog, repeat from * {} times, k2.\n",
    "Row {}: Knit {}, over, narrow, repeat 6 times.\n",
    "Row {}: k{}, inc 1, m1, k3, sl 1, dec 1.\n",
    "{}th row.—K 2, n, * o, k 1, n; repeat from star {} times more, k 2.\n",
)
SIZED = (
    "Row {}: K{} ({}, 8), *p2, k2; rep from * to end.\n",
    "Row {}: K2, *yo, k2tog, k{}; rep from * to last {} sts, k2. 60 (80, 100) sts.\n",
    "Row {}: Size M only: K to end. All sizes: p{} (0, {}), k to end.\n",
    "Knit {} rows. Work until piece measures {} (10, {}) cm.\n",
)
ROW = "Row {}: K2, *yo, k2tog, k3, p1; rep from * to last 2 sts, k2. ({} sts)\n"


def tokens(draw: random.Random, size: int) -> str:
    """Words of the trade in no order."""
    return " ".join(draw.choices(WORDS, k=size // 4))[:size]


def signs(draw: random.Random, size: int) -> str:
    """Signs, spaces and line ends."""
    return "".join(draw.choices(SIGNS, k=size))


def noise(draw: random.Random, size: int) -> str:
    """Any characters."""
    return "".join(chr(draw.choice((draw.randrange(32, 127), draw.randrange(0x110000)))) for _ in range(size))


def one_sign(draw: random.Random, size: int) -> str:
    """One word or sign over and over, in a row."""
    word = draw.choice((*WORDS, *SIGNS))
    return "Row 1: " + (word + draw.choice(("", " ", ", "))) * (size // (len(word) + 1))


def rows(draw: random.Random, size: int) -> str:
    """Sound rows under a cast-on."""
    return "Cast on 100 sts.\n" + "".join(ROW.format(n, 100) for n in range(1, size // 70))


def rows_with_slips(draw: random.Random, size: int) -> str:
    """Rows with a slip in every tenth."""
    text = rows(draw, size)
    for _ in range(size // 700):
        at = draw.randrange(len(text))
        text = text[:at] + draw.choice(("", "*", "1", "x", ", yo", "(", "\n")) + text[at + draw.randrange(3) :]
    return text


def doubtful(draw: random.Random, size: int) -> str:
    """Rows of old books with words of two meanings, with or without a cast-on, one in ten of another number."""
    row = draw.choice(DOUBTFUL)
    lines = [row.format(n, draw.choice((4,) * 9 + (3, 12))) for n in range(1, size // len(row))]
    return draw.choice(("", "Cast on 30 sts.\n")) + "".join(lines)


def in_sizes(draw: random.Random, size: int) -> str:
    """Rows and prose in three sizes."""
    rows = (draw.choice(SIZED).format(n, draw.randrange(2, 9), draw.randrange(2, 9)) for n in range(1, size // 50))
    return "Sizes: S (M, L)\n\nCast on 60 (80, 100) sts.\n" + "".join(rows)


def prose(draw: random.Random, size: int) -> str:
    """Sentences about knitting, wrapped anywhere."""
    words = draw.choices(PROSE, k=size // 6)
    return " ".join(word + draw.choice(("", "", "", "", ".", ",", "\n", ":")) for word in words)[:size]


def mixture(draw: random.Random, size: int) -> str:
    """Pieces of all other kinds."""
    kinds = [tokens, signs, one_sign, rows_with_slips, doubtful, prose]
    return "\n".join(draw.choice(kinds)(draw, size // 8) for _ in range(8))[:size]


KINDS: Mapping[str, Callable[[random.Random, int], str]] = {
    kind.__name__: kind
    for kind in (tokens, signs, noise, one_sign, rows, rows_with_slips, doubtful, in_sizes, prose, mixture)
}


def reference() -> list[str]:
    """Do some work of the kind that a check is made of, by which the speed of the machine is told."""
    known: dict[tuple[str, int], int] = {}
    words = []
    for at in range(20_000):
        word = ("k", at % 97)
        known[word] = known.get(word, 0) + 1
        if at % 3 == 0:
            words.append(f"{at}".rstrip("0"))
    return words


def timed(work: Callable[[], Answer]) -> tuple[Answer, float]:
    """Return what some work answers and its processor time in milliseconds."""
    begun = time.process_time()
    answer = work()
    return answer, 1_000 * (time.process_time() - begun)


class Tried(NamedTuple):
    """What the check of an input took, in milliseconds, and the reference beside it; in how many sizes it was read."""

    text: str
    measured: float
    beside: float
    sizes: int

    @property
    def spent(self) -> float:
        """What it takes at the speed of the reference."""
        return self.measured * REFERENCE / self.beside

    @property
    def per_whole(self) -> float:
        """What it takes per 64 kB checked: a text in sizes counts once for each; one under 16 kB as 16 kB."""
        return self.as_it_stands / self.sizes

    @property
    def as_it_stands(self) -> float:
        """The same where a text in sizes counts once."""
        return self.spent * WHOLE / max(LEAST, len(self.text))

    @property
    def by_the_clock(self) -> float:
        """What it took here per 64 kB, where a text in sizes counts once."""
        return self.measured * WHOLE / max(LEAST, len(self.text))

    @property
    def is_waited_for(self) -> bool:
        """Whether it takes longer than the limit for each 64 kB begun."""
        return self.spent > LIMIT * math.ceil(len(self.text) / WHOLE)


def tried(text: str, vocabulary: Vocabulary) -> Tried:
    """Check an input, and take its time and that of the reference before it and behind."""
    _, before = timed(reference)
    answer, measured = timed(lambda: check_text(text, vocabulary))
    _, behind = timed(reference)
    return Tried(text, measured, (before + behind) / 2, len(answer["sizes"] or [answer]))


def tried_again(taken: list[Tried], vocabulary: Vocabulary) -> None:
    """Try the inputs over the limit once more, and keep the least time of each."""
    for at, each in enumerate(taken):
        if each.per_whole > LIMIT:
            taken[at] = min(each, tried(each.text, vocabulary), key=lambda one: one.spent)


def told(name: str, taken: Sequence[Tried]) -> str:
    """Return what to print of a kind of input."""
    slowest, middle = max(taken, key=lambda each: each.per_whole), median(each.per_whole for each in taken)
    over = sum(each.per_whole > LIMIT for each in taken)
    as_they_stand, waited = sum(each.as_it_stands > LIMIT for each in taken), sum(each.is_waited_for for each in taken)
    clocked = [each.by_the_clock for each in taken]
    return (
        f"{name:<16} {len(taken):>6} tried, median {middle:6.1f}, slowest {slowest.per_whole:6.1f} ms per 64 kB, "
        f"{over} over {LIMIT}; a text in sizes counted once, {as_they_stand}; for each 64 kB begun, {waited}; "
        f"once and by the clock, slowest {max(clocked):.1f}, {sum(each > LIMIT for each in clocked)} over\n"
        f"    {slowest.text[:300]!r}"
    )


def main(minutes: float, seed: int) -> int:
    """Try inputs in turn until the time is over."""
    collect_seldom()  # As every command and server does at its start.
    draw, vocabulary = random.Random(seed), load_vocabulary()
    check_text(ROW.format(1, 100), vocabulary)
    taken: dict[str, list[Tried]] = {name: [] for name in KINDS}
    raised, end = 0, time.monotonic() + 60 * minutes
    while time.monotonic() < end:
        for name, kind in KINDS.items():
            text = kind(draw, draw.choice((200, 4_000, 20_000, WHOLE)))
            try:
                taken[name].append(tried(text, vocabulary))
            except Exception:
                raised += 1
                print(f"{name}: {text[:2_000]!r}\n{traceback.format_exc()}", flush=True)
    for _ in range(TRIES):
        for each in taken.values():
            tried_again(each, vocabulary)
    for name, each in taken.items():
        print(told(name, each) if each else f"{name}: none tried")
    beside = sorted(one.beside for each in taken.values() for one in each)
    print(f"the reference took {beside[0]:.1f} ms at the least and {median(beside):.1f} in the middle, for {REFERENCE}")
    print(f"{sum(map(len, taken.values()))} inputs, {raised} exceptions")
    return min(raised, 1)


if __name__ == "__main__":
    given = [*sys.argv[1:], "10", "1843"]
    sys.exit(main(float(given[0]), int(given[1] if len(sys.argv) > 2 else "1843")))
