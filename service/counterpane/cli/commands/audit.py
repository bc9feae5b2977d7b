"""`counterpane audit`: who did what in a library, whether the log holds, and a name that is erased from it."""

from __future__ import annotations

import argparse

from counterpane.cli import endings, output
from counterpane.cli.configuring import library_there
from counterpane.cli.options import person, take_store

NAME = "audit"
ABOUT = """Write the audit log of a library, a JSON object a line, or verify it.

Each line has the hash of the one before. `--verify` works out every line again and names the first that does not hold;
a log that was cut at its end shows only against a hash that was noted down before: give it with `--noted`. `--erase`
forgets a name and withdraws its tokens; the log keeps a key that names nobody, and still holds."""
EXAMPLES = """examples:
  $ counterpane audit --store season.db
  $ counterpane audit --verify --store season.db
  $ counterpane audit --erase "Odile" --by Bram --store season.db"""


def declare(parser: argparse.ArgumentParser) -> None:
    """Add the options."""
    acts = parser.add_mutually_exclusive_group()
    acts.add_argument("--verify", action="store_true", help="work out every line again")
    acts.add_argument("--erase", type=person, metavar="NAME", help="forget the name of a person")
    parser.add_argument("--noted", metavar="HASH", help="with --verify: a hash that must be among the lines")
    parser.add_argument("--by", type=person, metavar="NAME", help="with --erase: who erases it")
    take_store(parser)


def run(options: argparse.Namespace) -> int:
    """Write, verify or erase."""
    if options.verify:
        return _verify(options)
    return _erase(options) if options.erase else _write(options)


def _write(options: argparse.Namespace) -> int:
    import orjson

    from counterpane.library.keeping import audit

    with library_there(options.store) as services:
        names = services.store.names()
        for line in audit.lines(services.store):
            output.put(f"{orjson.dumps(audit.line_json(line, names)).decode()}\n")
    return endings.DONE


def _verify(options: argparse.Namespace) -> int:
    from counterpane.library.keeping import audit

    with library_there(options.store) as services, output.waiting("working out every line"):
        verdict = audit.verify(services.store, options.noted)
    if verdict.wrong:
        output.put(f"{verdict.wrong} {verdict.lines} before it hold.\n")
        return endings.FOUND
    if verdict.seen is False:
        output.put(f"No line has the hash {options.noted}: the log was cut, or is another one.\n")
        return endings.FOUND
    output.put(f"All {verdict.lines} lines hold; the last has the hash {verdict.last}\n")
    return endings.DONE


def _erase(options: argparse.Namespace) -> int:
    from counterpane.library.keeping.record import Act

    if not options.by:
        raise endings.Unreadable("--erase needs --by", "Name who erases it: it is logged.")
    with library_there(options.store) as services:
        key = services.store.person(options.erase)
        services.store.erase(key, Act(services.now(), options.by, "erase", f"person/{key}"))
    output.put(f"erased; the log keeps the key {key}\n")
    return endings.DONE
