"""How long `counterpane --help` takes, beside a Python that does nothing.

The aim is 300 ms at most on two cores; the ratio is what can be compared between machines.
"""

from __future__ import annotations

import statistics
import subprocess
import sys
import time

RUNS = 15


def main() -> None:
    """Print the medians of turns taken one after the other, and their ratio."""
    bare, asked = [], []
    for _ in range(RUNS):
        bare.append(_milliseconds("-c", "pass"))
        asked.append(_milliseconds("-m", "counterpane", "--help"))
    nothing, help_ = statistics.median(bare), statistics.median(asked)
    sys.stdout.write(f"python -c pass       {nothing:6.1f} ms\n")
    sys.stdout.write(f"counterpane --help   {help_:6.1f} ms, {help_ / nothing:.1f} times as long (aim: 300 ms)\n")


def _milliseconds(*arguments: str) -> float:
    begin = time.perf_counter()
    subprocess.run([sys.executable, *arguments], check=True, stdout=subprocess.DEVNULL)
    return 1000 * (time.perf_counter() - begin)


if __name__ == "__main__":
    main()
