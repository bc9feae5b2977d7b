"""`counterpane profile`: the lists of wards and charities that a library keeps."""

from __future__ import annotations

import argparse
from collections.abc import Callable, Mapping
from pathlib import Path
from typing import TYPE_CHECKING, Any

from counterpane.cli import endings, output
from counterpane.cli.configuring import library_at
from counterpane.cli.options import person, slug, take_json, take_store

if TYPE_CHECKING:
    from counterpane.library.ports import Kept

NAME = "profile"
ABOUT = """Keep the lists of wards and charities in a library: add one, revise it, list them, show one.

A list says what a place asks of a piece, in its own words, with its day and where it was read; it holds nothing about
a child. It is TOML or JSON, kept under the name of its file or under --slug. Every revision stays as it is: a plan
held against a list (`counterpane plan FILE --profile SLUG --store PATH`) says which one it was."""
EXAMPLES = """examples:
  $ counterpane profile add ward.toml --by Ines --store wards.db
  $ counterpane profile list --store wards.db
  $ counterpane profile show neonatal-unit-oxford-relayed --store wards.db"""


def declare(parser: argparse.ArgumentParser) -> None:
    """Add the acts, each with its options."""
    acts = parser.add_subparsers(metavar="ACT", required=True)
    for name, about, act in (("add", "keep a list", add), ("revise", "keep the next revision of a list", revise)):
        place = _act(acts, name, about, act)
        place.add_argument("file", metavar="FILE", help="the list, TOML or JSON, or - for standard input")
        place.add_argument("--slug", type=slug, metavar="SLUG", help="the name it is kept under (else the file's)")
        place.add_argument("--by", type=person, required=True, metavar="NAME", help="who keeps it")
        take_store(place)
    take_store(_act(acts, "list", "list what is kept", list_all))
    place = _act(acts, "show", "show a list, as TOML that can be changed and given to revise", show)
    place.add_argument("which", metavar="SLUG", help="the name it is kept under")
    place.add_argument("--revision", metavar="HASH", help="the revision of this hash (else the latest)")
    take_json(place)
    take_store(place)


def _act(acts: Any, name: str, about: str, act: Callable[[argparse.Namespace], int]) -> argparse.ArgumentParser:
    plain = argparse.RawDescriptionHelpFormatter
    place: argparse.ArgumentParser = acts.add_parser(
        name, help=about, description=ABOUT, epilog=EXAMPLES, formatter_class=plain, allow_abbrev=False
    )
    place.set_defaults(act=act)
    return place


def run(options: argparse.Namespace) -> int:
    """Do what was asked."""
    status: int = options.act(options)
    return status


def add(options: argparse.Namespace) -> int:
    """Keep a list under a name that is not in use."""
    from counterpane.library.safety.kept_profiles import PROFILES

    content = _content(options)
    with library_at(options.store) as services:
        return _tell(PROFILES.add(services, content, options.by), "kept")


def revise(options: argparse.Namespace) -> int:
    """Keep the next revision of a list; the same content again changes nothing."""
    from counterpane.library.safety.kept_profiles import PROFILES

    content = _content(options)
    with library_at(options.store) as services:
        return _tell(PROFILES.revise(services, content["slug"], content, None, options.by), "at")


def list_all(options: argparse.Namespace) -> int:
    """List what is kept, by name."""
    from counterpane.cli.showing.tables import table_of
    from counterpane.library.safety.kept_profiles import cards

    with library_at(options.store) as services, output.page() as console:
        table = table_of("Slug", "Dated", "Whose", "Where it was read")
        table.columns[0].no_wrap = True
        for card in cards(services):
            table.add_row(card["slug"], card["dated"], card["name"], card["source"])
        console.print(table)
    return endings.DONE


def show(options: argparse.Namespace) -> int:
    """Show a list at one revision or at the latest."""
    import json
    from decimal import Decimal

    from counterpane.library.safety.kept_profiles import PROFILES
    from counterpane.library.safety.profiles import PROFILE
    from counterpane.press import toml

    with library_at(options.store) as services:
        if options.revision:
            kept = PROFILES.revision(services, options.which, options.revision)
        else:
            kept = PROFILES.get(services, options.which)
    whole = json.loads(kept.body, parse_float=Decimal)
    if options.json:
        output.put_json(whole)
    else:
        output.put(f"# {_said(kept)}\n{toml.document({name: whole[name] for name in PROFILE})}")
    return endings.DONE


def _content(options: argparse.Namespace) -> Mapping[str, Any]:
    """Return what the file holds, with the name it is kept under."""
    from counterpane.cli.documents import document_of
    from counterpane.cli.inputs import read_text
    from counterpane.cli.planning import A_LIST, refuse_misfits
    from counterpane_schema.profile import ProfileContent

    given = read_text(options.file)
    document = document_of(given)
    named = options.slug or document.get("slug") or (Path(options.file).stem if options.file != "-" else None)
    content = {**document, "slug": named} if named else document
    refuse_misfits(ProfileContent(), content, given.name, A_LIST)
    sent: Mapping[str, Any] = ProfileContent().load(content)
    return sent


def _tell(kept: Kept, done: str) -> int:
    output.put(f"{done} {_said(kept)}\n")
    return endings.DONE


def _said(kept: Kept) -> str:
    return f"{kept.slug}, revision {kept.number}, sha256 {kept.sha256}"
