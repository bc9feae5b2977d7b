"""`counterpane token`: tokens for those who may use a library over HTTP: made, listed and withdrawn."""

from __future__ import annotations

import argparse
from datetime import UTC, datetime, timedelta

from counterpane.cli import endings, output
from counterpane.cli.configuring import library_at
from counterpane.cli.options import days, person, take_store

ROLES = ("reader", "contributor", "reviewer", "keeper")
NAME = "token"
ABOUT = """Make a token for somebody who may use a library over HTTP, list the tokens, or withdraw one.

Only its hash is kept: the token is printed once, alone on standard output. A reader reads, a contributor also submits,
a reviewer also reviews, a keeper also administers. All tokens for one name stand for one person."""
EXAMPLES = """examples:
  $ counterpane token create --role contributor --for "Ines" --store season/library.db
  $ counterpane token create --role reviewer --for "Suri" --days 30 --store season/library.db
  $ counterpane token list --store season/library.db"""
SHOWN = 12
"""Characters of the hash by which a list tells tokens apart; house."""


def declare(parser: argparse.ArgumentParser) -> None:
    """Add the acts, each with its options."""
    acts = parser.add_subparsers(metavar="ACT", required=True)
    plain = argparse.RawDescriptionHelpFormatter
    told = (("create", "make a token", create), ("list", "list the tokens", list_all))
    for name, about, act in (*told, ("withdraw", "withdraw a token", withdraw)):
        place = acts.add_parser(name, help=about, description=ABOUT, epilog=EXAMPLES, formatter_class=plain)
        place.set_defaults(act=act)
        if name == "create":
            place.add_argument("--role", choices=ROLES, required=True, help="what its holder may do")
            place.add_argument("--for", dest="name", metavar="NAME", type=person, required=True, help="who it is for")
            place.add_argument("--days", type=days, metavar="N", help="for how many days (else for ever)")
        if name == "withdraw":
            place.add_argument("start", metavar="HASH", help="the beginning of its hash, from the list")
            place.add_argument("--by", type=person, required=True, metavar="NAME", help="who withdraws it")
        take_store(place)


def run(options: argparse.Namespace) -> int:
    """Do what was asked."""
    status: int = options.act(options)
    return status


def create(options: argparse.Namespace) -> int:
    """Make the token and print it."""
    from counterpane.cli.configuring import settings_of
    from counterpane.wiring import create_token

    store = str(settings_of(store=options.store)["store"].value)
    until = (datetime.now(UTC) + timedelta(days=options.days)).date().isoformat() if options.days else None
    output.put(f"{create_token(store, options.role, options.name, until)}\n")
    return endings.DONE


def list_all(options: argparse.Namespace) -> int:
    """List the tokens; none can be shown again, only the beginning of its hash."""
    from counterpane.cli.showing.tables import table_of

    with library_at(options.store) as services, output.page() as console:
        table = table_of("Hash", "Role", "For", "Made", "Until")
        for each in services.store.tokens():
            table.add_row(each.sha256[:SHOWN], each.role, each.name, each.at[:10], each.until or "for ever")
        console.print(table)
    return endings.DONE


def withdraw(options: argparse.Namespace) -> int:
    """Withdraw the token whose hash begins so."""
    from counterpane.library.keeping.record import Act
    from counterpane.library.review.tokens import named

    with library_at(options.store) as services:
        found = named(services.store, options.start)
        act = Act(services.now(), options.by, "withdraw-token", f"token/{found.sha256}")
        services.store.withdraw_token(found.sha256, act)
    output.put(f"withdrew the token {found.sha256[:SHOWN]} of {found.name}\n")
    return endings.DONE
