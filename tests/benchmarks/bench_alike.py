"""How long it takes to find the like of a texture: run it with `python tests/benchmarks/bench_alike.py`.

The library holds the starters and many random textures beside them; the ratios can be compared between machines.
"""

from __future__ import annotations

import random
import sys
import time

from counterpane.library.parts.alike import alike
from counterpane.library.ports import Entry, TextureKey
from counterpane.library.services import Services
from counterpane.wiring import open_library

SIZES = (1_000, 4_000, 20_000)
ASKED = ("seed-stitch", "waffle", "german-pattern")


def main() -> None:
    """Print the time for each texture asked for, and how it grows with the library."""
    services = open_library()
    held = 0
    for size in SIZES:
        services.store.add(*(_entry(number) for number in range(held, size)))
        held = size
        for slug in ASKED:
            sys.stdout.write(f"{size} textures, {slug}: {_milliseconds(services, slug):.0f} ms\n")


def _entry(number: int) -> Entry:
    chance = random.Random(number)
    rows, stitches = chance.choice((2, 4, 6, 8, 12)), chance.choice((2, 4, 6, 8, 10, 12))
    looks = "/".join("".join(chance.choice("kkkp") for _ in range(stitches)) for _ in range(rows))
    slug, text = f"texture-{number}", f'{{"name":"Texture {number}"}}'.encode()
    card = f'{{"slug":"{slug}"}}'.encode()
    key = (TextureKey(0, slug, looks),)
    return Entry("component", slug, "body", f"{number:064x}", text, text, card, slug, "", "", "", "draft", textures=key)


def _milliseconds(services: Services, slug: str) -> float:
    begin = time.process_time()
    alike(services, slug)
    return 1000 * (time.process_time() - begin)


if __name__ == "__main__":
    main()
