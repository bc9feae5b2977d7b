"""`counterpane token create`: a token for somebody who may write to a library."""

from __future__ import annotations

import argparse

from counterpane.cli import endings, output
from counterpane.cli.options import take_store

ROLES = ("reader", "contributor", "reviewer", "keeper")
NAME = "token"
ABOUT = """Make a token for somebody who may use a library over HTTP.

Only its hash is kept: the token is printed once, alone on standard output. A reader reads, a contributor also submits,
a reviewer also reviews, a keeper also administers."""
EXAMPLES = """examples:
  $ counterpane token create --role contributor --for "Ines" --store season/library.db"""


def declare(parser: argparse.ArgumentParser) -> None:
    """Add the one act there is, with its options."""
    acts = parser.add_subparsers(metavar="ACT", required=True)
    plain = argparse.RawDescriptionHelpFormatter
    create = acts.add_parser("create", help="make a token", description=ABOUT, epilog=EXAMPLES, formatter_class=plain)
    create.add_argument("--role", choices=ROLES, required=True, help="what its holder may do")
    create.add_argument("--for", dest="name", metavar="NAME", required=True, help="who it is for")
    take_store(create)


def run(options: argparse.Namespace) -> int:
    """Make the token and print it."""
    from counterpane.cli.configuring import settings_of
    from counterpane.wiring import create_token

    name = options.name.strip()
    if not name or len(name) > 200 or not name.isprintable():
        raise endings.Unreadable("--for needs a name of 1 to 200 printable characters", 'For example: --for "Ines".')
    store = str(settings_of(store=options.store)["store"].value)
    output.put(f"{create_token(store, options.role, name)}\n")
    return endings.DONE
