"""How long importing the client takes, beside a Python that does nothing: `python tests/benchmarks/bench_client.py`.

The aim is 150 ms at most for the import. What is told is processor time, which other work on the machine lengthens
little; the ratio can be compared between machines. `requests` is loaded with the first call and is told beside it.
"""

from __future__ import annotations

import resource
import statistics
import subprocess
import sys

RUNS = 15
BARE, CLIENT, WHOLE = "pass", "import counterpane.client", "import counterpane.client, requests"


def main() -> None:
    """Print the medians of turns taken one after the other, what the import adds, and their ratio."""
    taken: dict[str, list[float]] = {BARE: [], CLIENT: [], WHOLE: []}
    for _ in range(RUNS):
        for code, times in taken.items():
            times.append(_milliseconds(code))
    nothing = statistics.median(taken[BARE])
    for code, times in taken.items():
        median = statistics.median(times)
        told = f"{median:6.1f} ms, {median - nothing:6.1f} ms more, {median / nothing:.1f} times as long"
        sys.stdout.write(f"python -c {code!r:40} {told}\n")


def _milliseconds(code: str) -> float:
    begin = _processor_seconds()
    subprocess.run([sys.executable, "-c", code], check=True)
    return 1000 * (_processor_seconds() - begin)


def _processor_seconds() -> float:
    used = resource.getrusage(resource.RUSAGE_CHILDREN)
    return used.ru_utime + used.ru_stime


if __name__ == "__main__":
    main()
