"""Whether the pattern of every texture checks clean in every construction and both terms, and how long that takes.

Run it with `python -m benchmarks.every_pattern` in `tests/`; it prints what is found and ends with 1 if anything but
the notes that are true of a texture is.
"""

from __future__ import annotations

import sys
from itertools import product
from time import perf_counter

from counterpane.wiring import open_library
from press.test_clean import BODIES, NOT_TOLD_IN_ITS_BOOK, WAYS, found


def main() -> int:
    """Try all of them, and print what is found."""
    library, begun, wrong = open_library(), perf_counter(), 0
    for body, (construction, terms) in product(BODIES, WAYS):
        rules = found(library, body, construction, terms) - NOT_TOLD_IN_ITS_BOOK.get(body, set())
        if rules:
            wrong += 1
            print(f"{body}, {construction}, {terms}: {', '.join(sorted(rules))}")
    print(f"{len(BODIES) * len(WAYS)} patterns in {perf_counter() - begun:.0f} s, {wrong} with findings")
    return min(wrong, 1)


if __name__ == "__main__":
    sys.exit(main())
