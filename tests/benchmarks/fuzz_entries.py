"""Send broken and twisted input to every public entry: the check, each POST of the API, and the command line.

    cd tests && python -m benchmarks.fuzz_entries [INPUTS] [SEED] [ENTRY…]

Real requests (the examples of the API page, the seeds, the texts of the tests) are changed by chance: other types,
members dropped, doubled and made up, names swapped, extreme numbers, odd characters, nesting, huge strings, broken
bytes. For each entry it prints how many were tried, how they ended, how many were wrong, and the slowest in seconds of
processor time. Wrong is an exception, a status of 500 and more, an answer of 400 and more that is no problem document,
more than 5 seconds, a write that was acknowledged and is not there, or one that was refused and left something. Each
one is printed with its input. The same seed gives the same inputs. Exits by whether anything was wrong.
"""

from __future__ import annotations

import contextlib
import io
import json
import random
import shlex
import signal
import subprocess
import sys
import tempfile
import time
import traceback
from collections import Counter
from collections.abc import Callable, Iterator, Sequence
from dataclasses import dataclass, field
from hashlib import sha256
from pathlib import Path
from typing import Any

from benchmarks.twisting import ODD, body_of, texts, twisted, twisted_bytes, twisted_text
from counterpane import wiring
from counterpane.api.access import Journal
from counterpane.api.application import create_app
from counterpane.api.catalogue import OPERATIONS
from counterpane.cli import main as command_line
from counterpane.cli.parser import COMMANDS
from counterpane.craft.component import content_of
from counterpane.library.review.submissions import told_of
from counterpane.library.review.tokens import create
from counterpane.library.services import Services
from counterpane.library.texts.checks import check_text
from counterpane.seeding import load_components
from counterpane.seeding.recipes import load_recipes

LONGEST_S = 5
ROOT = Path(__file__).parents[2]


class TooSlow(BaseException):
    """An input took more than its time; not an Exception, so that nothing in between takes it for its own."""


@dataclass(slots=True)
class Tally:
    """What became of the inputs of one entry."""

    ended: Counter[str] = field(default_factory=Counter)
    wrong: list[str] = field(default_factory=list)
    slowest: float = 0.0

    def put(self, ended: str, given: object, fault: str = "") -> None:
        """Count one ending, and keep the input of one that is wrong."""
        self.ended[ended] += 1
        if fault:
            self.wrong.append(f"{fault}\n    input: {str(given)[:1500]!r}")


Attempt = Callable[[Tally], None]


def check_entry(draw: random.Random) -> Attempt:
    """Give texts to the check, in process."""
    vocabulary, known = wiring.open_library(starters=False).vocabulary, texts()

    def attempt(tally: Tally) -> None:
        text = twisted_text(draw, draw.choice(known))
        if draw.random() < 0.3:
            text += "\n" + twisted_text(draw, draw.choice(known))
        cast_on = draw.choice((None, None, 1, 96, 139, 10**18 - 1))
        with _timed(tally, text):
            found = check_text(text, vocabulary, cast_on, draw.choice((None, "us", "uk")))
            tally.put("with findings" if found["findings"] else "clean", text)

    return attempt


def posted_entry(name: str) -> Callable[[random.Random], Attempt]:
    """Return the entry that an operation of the API is."""
    operation = next(each for each in OPERATIONS if each.name == name)
    bodies = [dict(each.body) for each in operation.examples if each.body]
    bodies += [content_of(part) for part in load_components()] if name == "add_component" else []
    bodies += [dict(recipe) for recipe in load_recipes()] if name == "add_recipe" else []

    def entry(draw: random.Random) -> Attempt:
        failed: list[bytes] = []
        seen = [0]
        services = wiring.open_library(starters=name != "add_component")
        client = create_app(services, journal=Journal(failed.append)).test_client()
        headers = {"Authorization": f"Bearer {create(services.store, 'keeper', 'anna', services.now())}"}
        headers["Content-Type"] = "application/json"

        def attempt(tally: Tally) -> None:
            value = draw.choice(bodies)
            value = {**value, "slug": f"part-{draw.randrange(10**9)}"} if "slug" in value else value
            for _ in range(draw.choice((0, 1, 1, 1, 2, 3, 8))):
                value = twisted(draw, value, bodies)
            body, before = body_of(draw, value), _written(services, seen[-1])
            seen[:] = [before]
            with _timed(tally, body):
                answer = client.post(operation.path, data=body, headers=headers)
                fault = _fault(answer, failed) or _lost(services, before, answer)
                tally.put(str(answer.status_code), body, fault)
            failed.clear()

        return attempt

    return entry


def _fault(answer: Any, failed: Sequence[bytes]) -> str:
    if answer.status_code >= 500:
        return f"{answer.status_code}: {b''.join(failed).decode()}"
    if answer.status_code >= 400 and (answer.mimetype != "application/problem+json" or not answer.json["hint"]):
        return f"{answer.status_code} is no problem document that helps: {answer.text[:300]}"
    return ""


def _written(services: Services, last: int) -> int:
    """Return the number of the last change, looked for from one that is known."""
    while found := services.store.changes(last, 1000):
        last = found[-1].seq
    return last


def _lost(services: Services, before: int, answer: Any) -> str:
    """Say what a write that was acknowledged lacks, or a refused one left."""
    written = services.store.changes(before, 9)
    if answer.status_code != 201:
        return f"{answer.status_code} left {written}" if written else ""
    shelf, _, location = answer.headers["Location"].rpartition("/")
    if shelf.endswith("/submissions"):  # What waits for somebody is no revision, and stands in no history of them.
        kept_so = told_of(services, int(location))
        return "" if answer.json == kept_so else f"201, and the store holds {kept_so}"
    if len(written) != 1:
        return f"201 left {len(written)} changes"
    change = written[0]
    kept = services.store.latest(change.kind, change.slug)
    named = sha256(services.store.object(kept.sha256)).hexdigest()
    whole = (kept.slug, kept.body, f'"{named}"') == (location, answer.data, answer.headers["ETag"])
    return "" if whole else f"201, and the store holds {kept}"


def typed_entry(draw: random.Random) -> Attempt:
    """Type commands in process, in a folder of their own."""
    lines, files = _lines(), _files()

    def attempt(tally: Tally) -> None:
        argv, given = _argv(draw, lines), _given(draw, files)
        written = io.BytesIO()
        out = io.TextIOWrapper(io.BytesIO(), encoding="utf-8")
        err = io.TextIOWrapper(written, encoding="utf-8", write_through=True)
        stdin = io.TextIOWrapper(io.BytesIO(given[1]), encoding="utf-8")
        with tempfile.TemporaryDirectory() as folder, contextlib.chdir(folder):
            Path(given[0]).write_bytes(given[1])
            with _timed(tally, (argv, given)), _streams(stdin, out, err):
                status = command_line(argv)
                said = written.getvalue().decode("utf-8", "replace")
                tally.put(str(status), (argv, given), _misbehaved(status, said))

    return attempt


def process_entry(draw: random.Random) -> Attempt:
    """Type commands as processes of their own."""
    lines, files = _lines(), _files()
    program = [sys.executable, "-c", "import sys; from counterpane.cli import main; sys.exit(main())"]
    environment = {"PYTHONPATH": ":".join(sys.path), "PATH": "/usr/bin:/bin"}

    def attempt(tally: Tally) -> None:
        argv, given = [word for word in _argv(draw, lines) if "\0" not in word], _given(draw, files)
        argv = [word.encode("utf-8", "replace").decode() for word in argv]
        with tempfile.TemporaryDirectory() as folder:
            Path(folder, given[0]).write_bytes(given[1])
            done = subprocess.run(
                [*program, *argv],
                cwd=folder,
                env=environment,
                input=given[1],
                capture_output=True,
                timeout=60,
                check=False,
            )
        said = done.stderr.decode("utf-8", "replace")
        tally.put(str(done.returncode), (argv, given), _misbehaved(done.returncode, said))

    return attempt


def _misbehaved(status: int, said: str) -> str:
    broken = "Traceback" in said or "a fault in Counterpane itself" in said
    return f"status {status}: {said}" if broken or status not in range(5) else ""


def _lines() -> list[list[str]]:
    """Return the examples of each command, without its name; nothing that serves, and no store that takes long."""
    shown = [line for each in COMMANDS for line in each.EXAMPLES.splitlines()]
    typed = [line.partition("$ counterpane ")[2].rstrip("\\ ") for line in shown if "$ counterpane " in line]
    return [shlex.split(each) for each in typed if each.split()[0] not in ("serve", "demo", "token")]


def _argv(draw: random.Random, lines: Sequence[Sequence[str]]) -> list[str]:
    """Return a command line with words changed, taken out and put in."""
    argv = list(draw.choice(lines))
    flags = [word for line in lines for word in line if word.startswith("--")]
    for _ in range(draw.choice((0, 0, 1, 1, 2, 5))):
        at = draw.randrange(len(argv) + 1)
        word = draw.choice((draw.choice(flags), str(draw.choice(ODD))[:300], "-", "--json", "rows.txt", "blanket.toml"))
        argv[at : at + draw.randrange(2)] = [word]
    barred = ("serve", "demo", "token")
    return [word for word in argv if word not in barred and not word.startswith(("/", "..", "--into", "--st"))]


def _given(draw: random.Random, files: Sequence[tuple[str, bytes]]) -> tuple[str, bytes]:
    """Return a file of a name that the examples use, with what is in it changed."""
    name, data = draw.choice(files)
    text = twisted_text(draw, data.decode()).encode("utf-8", "surrogatepass")
    return name, draw.choice((data, text, text, twisted_bytes(draw, data)))


def _files() -> list[tuple[str, bytes]]:
    recipes = sorted((ROOT / "seeds" / "recipes").glob("*.toml"))
    plans = [("blanket.toml", path.read_bytes()) for path in recipes]
    plans += [("blanket.toml", json.dumps(each.body).encode()) for each in _plan_examples()]
    return plans + [("rows.txt", text.encode()) for text in texts()]


def _plan_examples() -> list[Any]:
    return [each for one in OPERATIONS for each in one.examples if one.name in ("plan", "grade", "label") and each.body]


@contextlib.contextmanager
def _streams(*streams: io.TextIOWrapper) -> Iterator[None]:
    """Put these in the place of standard input, output and error."""
    kept = sys.stdin, sys.stdout, sys.stderr
    sys.stdin, sys.stdout, sys.stderr = streams
    try:
        yield
    finally:
        sys.stdin, sys.stdout, sys.stderr = kept


@contextlib.contextmanager
def _timed(tally: Tally, given: object) -> Iterator[None]:
    """Count the processor time, and end what takes too long or raises as wrong."""

    def stop(*_: object) -> None:
        raise TooSlow

    kept = signal.signal(signal.SIGVTALRM, stop)
    signal.setitimer(signal.ITIMER_VIRTUAL, LONGEST_S)
    begun = time.process_time()
    try:
        yield
    except (Exception, TooSlow) as fault:
        tally.put(type(fault).__name__, given, traceback.format_exc()[-1500:])
    finally:
        signal.setitimer(signal.ITIMER_VIRTUAL, 0)
        signal.signal(signal.SIGVTALRM, kept)
        tally.slowest = max(tally.slowest, time.process_time() - begun)


POSTS = tuple(each.name for each in OPERATIONS if each.method == "POST")
ENTRIES: dict[str, Callable[[random.Random], Attempt]] = {"check_text": check_entry, "command_line": typed_entry}
ENTRIES |= {"processes": process_entry} | {name: posted_entry(name) for name in POSTS}


def tried(name: str, inputs: int, seed: int) -> Tally:
    """Return what became of this many inputs of an entry."""
    attempt, tally = ENTRIES[name](random.Random(f"{name} {seed}")), Tally()
    for _ in range(inputs):
        attempt(tally)
    return tally


def main(inputs: int, seed: int, names: Sequence[str]) -> int:
    """Print a line for each entry, and every input that went wrong."""
    wrong = 0
    for name in names or ENTRIES:
        tally = tried(name, inputs if name != "processes" else min(inputs, 300), seed)
        ended = ", ".join(f"{count} × {how}" for how, count in sorted(tally.ended.items()))
        total = sum(tally.ended.values())
        print(f"{name:<18} {total:>6} inputs, {len(tally.wrong)} wrong, slowest {tally.slowest:5.2f} s: {ended}")
        print(*(f"  {each}" for each in tally.wrong[:20]), sep="\n", end="", flush=True)
        wrong += len(tally.wrong)
    return min(wrong, 1)


if __name__ == "__main__":
    given = [*sys.argv[1:3], "10000", "1843"][:2] if len(sys.argv) < 3 else sys.argv[1:3]
    sys.exit(main(int(given[0]), int(given[1]), sys.argv[3:]))
