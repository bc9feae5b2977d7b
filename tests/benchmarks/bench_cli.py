"""How long commands take, beside a Python that does nothing: `--help`, and what looks through all that ships.

The aim of `--help` is 300 ms at most on two cores. `find` and `matrix` prove every starter when this version is asked
for the first time, and read what they proved from then on; the ratio of the two can be compared between machines.
"""

from __future__ import annotations

import os
import statistics
import subprocess
import sys
import time
from pathlib import Path
from tempfile import TemporaryDirectory

from counterpane.at_hand import CACHE

RUNS = 9


def main() -> None:
    """Print the medians of turns taken one after the other, and their ratios."""
    nothing, help_ = _medians(("-c", "pass"), ("-m", "counterpane", "--help"))
    sys.stdout.write(f"python -c pass            {nothing:6.0f} ms\n")
    sys.stdout.write(f"counterpane --help        {help_:6.0f} ms, {help_ / nothing:.1f} times as long (aim: 300 ms)\n")
    for command in ("find", "matrix"):
        first, again = _first_and_again(command)
        said = f"{first:6.0f} ms the first time, {again:6.0f} ms again"
        sys.stdout.write(f"counterpane {command:<13} {said}: {first / again:.1f} times as fast (aim: 2)\n")


def _medians(*asked: tuple[str, ...]) -> list[float]:
    taken: list[list[float]] = [[] for _ in asked]
    for _ in range(RUNS):
        for arguments, times in zip(asked, taken, strict=True):
            times.append(_milliseconds(arguments))
    return [statistics.median(times) for times in taken]


def _first_and_again(command: str) -> tuple[float, float]:
    """Return the medians of a command with nothing at hand, and of the same with what the turn before left."""
    taken: tuple[list[float], list[float]] = ([], [])
    for _ in range(RUNS):
        with TemporaryDirectory() as cache:
            for times in taken:
                times.append(_milliseconds(("-m", "counterpane", command), Path(cache)))
    first, again = map(statistics.median, taken)
    return first, again


def _milliseconds(arguments: tuple[str, ...], cache: Path | None = None) -> float:
    environment = {**os.environ, CACHE: str(cache)} if cache else None
    begin = time.perf_counter()
    subprocess.run([sys.executable, *arguments], check=True, stdout=subprocess.DEVNULL, env=environment)
    return 1000 * (time.perf_counter() - begin)


if __name__ == "__main__":
    main()
