"""How many copies of a texture are found to be like it, and how many others are taken for one.

Run it with `python tests/benchmarks/bench_copies.py 500 7`: so many random textures, by this seed, each written as rows
and kept as anybody's would be, and of each a copy that is shifted, mirrored, turned or seen from behind. A texture is
flagged where the answer of `alike` names it. The copies are looked for among all the textures; for false alarms each
texture is looked for before it has a copy.
"""

from __future__ import annotations

import random
import sys
import time
from dataclasses import dataclass

from counterpane.craft.texture import MOVES, PLAIN, Cell, canonical, moved
from counterpane.library.parts import components
from counterpane.library.parts.alike import alike
from counterpane.library.services import Services
from counterpane.wiring import open_library

SIDES = (4, 6, 8, 10, 12)


@dataclass(frozen=True, slots=True)
class Counted:
    """What came out: questions that named something they should have, or should not have, and their seconds."""

    named: int
    seconds: float


def main(count: int, seed: int) -> None:
    """Print how many are flagged, how many are false alarms, and how long a question takes."""
    chance = random.Random(seed)
    services = open_library(starters=False)
    cells = distinct(chance, count)
    for number, cell in enumerate(cells):
        keep(services, f"own-{number}", cell)
    alarms = asked(services, [(f"own-{number}", None) for number in range(count)])
    for number, cell in enumerate(cells):
        keep(services, f"copy-{number}", copied(cell, chance))
    found = asked(services, [(f"copy-{number}", f"own-{number}") for number in range(count)])
    sys.stdout.write(f"{found.named} of {count} copies flagged; {alarms.named} of {count} textures a false alarm\n")
    sys.stdout.write(f"{1000 * found.seconds / count:.0f} ms a question among {2 * count} textures\n")


def distinct(chance: random.Random, count: int) -> list[Cell]:
    """Return random textures of knit and purl, none the same as another by any shift or move."""
    found: dict[Cell, Cell] = {}
    while len(found) < count:
        rows, stitches = chance.choice(SIDES), chance.choice(SIDES)
        cell = tuple(tuple(chance.choice("kkp") for _ in range(stitches)) for _ in range(rows))
        images = (image for move in MOVES if (image := moved(cell, move, PLAIN)) is not None)
        found.setdefault(canonical(tuple(images)), cell)
    return list(found.values())


def copied(cell: Cell, chance: random.Random) -> Cell:
    """Return a texture by one of the moves, begun at another row and another stitch."""
    image = moved(cell, chance.choice(MOVES), PLAIN)
    assert image is not None
    up, along = chance.randrange(len(image)), chance.randrange(len(image[0]))
    return tuple((*row[along:], *row[:along]) for row in (*image[up:], *image[:up]))


def keep(services: Services, slug: str, cell: Cell) -> None:
    """Keep a texture as a component of its rows in words."""
    rows = "".join(f"Row {number} ({side(number)}): {words(row, number)}\n" for number, row in enumerate(cell, 1))
    wide = len(cell[0])
    content = {
        "slug": slug,
        "kind": "body",
        "name": slug,
        "summary": "A random texture.",
        "reversible": None,
        "versions": [{"name": "one", "rows": rows}],
        "examples": [{"stitches": wide * times, "after": [wide * times] * len(cell)} for times in (1, 3)],
        "safety": dict.fromkeys(("loose_yarn", "floats", "openings", "ties", "fibre"), "not known"),
        "provenance": {"source": "common-practice", "licence": "CC0-1.0", "author": "nobody"},
    }
    components.add(services, content, "nobody")


def side(number: int) -> str:
    """Return the side that a row is worked on."""
    return "RS" if number % 2 else "WS"


def words(row: tuple[str, ...], number: int) -> str:
    """Return a row in words; cells are as the right side shows them, from right to left, as RS rows are worked."""
    seen = row if number % 2 else tuple("p" if each == "k" else "k" for each in reversed(row))
    return f"*{', '.join(f'{each}1' for each in seen)}; rep from * to end."


def asked(services: Services, questions: list[tuple[str, str | None]]) -> Counted:
    """Ask about each texture, and count the answers that name the other one, or any where there is none to name."""
    begin, named = time.process_time(), 0
    for slug, other in questions:
        slugs = {item["slug"] for item in alike(services, slug)["items"]}
        named += other in slugs if other else bool(slugs)
    return Counted(named, time.process_time() - begin)


if __name__ == "__main__":
    main(int(sys.argv[1]), int(sys.argv[2]))
