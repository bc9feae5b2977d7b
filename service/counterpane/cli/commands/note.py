"""`counterpane note`: test knits, answers given to knitters and finished pieces, noted of a kept recipe."""

from __future__ import annotations

import argparse
from collections.abc import Callable, Iterable
from typing import TYPE_CHECKING, Any

from counterpane.cli import endings, output
from counterpane.cli.configuring import library_at
from counterpane.cli.options import note_number, person, slug, take_json, take_store
from counterpane_schema.choices import JOTTINGS

if TYPE_CHECKING:
    from counterpane.library.knitting.noting import Which

NAME = "note"
ABOUT = """Note what becomes of a kept recipe: test knits, answers given to knitters, and finished pieces.

FILE is TOML or JSON. A test knit stands beside what its plan predicted, and `note knitted` works loop length and pace
out of all of them, saying on how many knits that rests. An answer belongs to a row; `note rows` lists what was asked
and answered, and flags a row that two knitters or more ask about. What was measured of a piece stands beside what
safety asked: an estimate does not count, and what is not assessed is no pass. Nothing of a child is kept: there is no
member for it, since a record of a piece is copied from hand to hand."""
EXAMPLES = """examples:
  $ counterpane note add test-knit first-frost knit.toml --by Odile --store season.db
  $ counterpane note knitted first-frost --store season.db
  $ counterpane note rows first-frost --store season.db
  $ counterpane note take-back test-knit first-frost 1 --say "Weighed wet." --by Odile --store season.db"""


def declare(parser: argparse.ArgumentParser) -> None:
    """Add the acts, each with its options."""
    acts = parser.add_subparsers(metavar="ACT", required=True)
    place = _act(acts, "add", "note something of a recipe", add, of_a_sort=True)
    place.add_argument("file", metavar="FILE", help="what is noted, TOML or JSON, or - for standard input")
    place.add_argument("--by", type=person, required=True, metavar="NAME", help="who writes it down")
    _act(acts, "list", "list what was noted", list_all, of_a_sort=True)
    for name, about, act in (
        ("show", "show one with what follows from it", show),
        ("take-back", "take one back: what it said is kept no longer", take_back),
    ):
        place = _act(acts, name, about, act, of_a_sort=True)
        place.add_argument("number", metavar="N", type=note_number, help="its number")
    place.add_argument("--say", metavar="TEXT", required=True, help="the reason in a sentence for people")
    place.add_argument("--by", type=person, required=True, metavar="NAME", help="who takes it back, who wrote it down")
    _act(acts, "knitted", "hold all test knits against their plans", tell_knitted)
    _act(acts, "rows", "list the rows that were asked about or answered", tell_rows)


def _act(
    acts: Any, name: str, about: str, act: Callable[[argparse.Namespace], int], *, of_a_sort: bool = False
) -> argparse.ArgumentParser:
    plain = argparse.RawDescriptionHelpFormatter
    place: argparse.ArgumentParser = acts.add_parser(
        name, help=about, description=ABOUT, epilog=EXAMPLES, formatter_class=plain, allow_abbrev=False
    )
    place.set_defaults(act=act)
    if of_a_sort:
        place.add_argument("sort", metavar="SORT", choices=JOTTINGS, help=", ".join(JOTTINGS))
    place.add_argument("which", metavar="SLUG", type=slug, help="the recipe")
    take_store(place)
    take_json(place)
    return place


def run(options: argparse.Namespace) -> int:
    """Do what was asked."""
    status: int = options.act(options)
    return status


def _which(options: argparse.Namespace) -> Which:
    from counterpane.library.knitting.noting import Which

    return Which(options.sort, options.which, getattr(options, "number", 0))


def _end(options: argparse.Namespace, told: Any, words: Iterable[str]) -> int:
    """Tell what was done or found: as JSON, or in lines of words."""
    if options.json:
        output.put_json(told)
    else:
        output.put("\n".join(words) + "\n")
    return endings.DONE


def add(options: argparse.Namespace) -> int:
    """Note something of a recipe."""
    from counterpane.cli.documents import document_of
    from counterpane.cli.inputs import read_text
    from counterpane.cli.planning import refuse_misfits
    from counterpane.library.knitting import noting
    from counterpane_schema.jotting import CONTENTS

    given, form = read_text(options.file), CONTENTS[options.sort]()
    content = document_of(given)
    refuse_misfits(form, content, given.name, f"a {options.sort}")
    with library_at(options.store) as services:
        told, _ = noting.add_once(services, _which(options), form.load(content), options.by, None)
    return _end(options, told, [f"noted {told['sort']} {told['number']} of {told['recipe']}, sha256 {told['sha256']}"])


def list_all(options: argparse.Namespace) -> int:
    """List what was noted, the first one first."""
    from counterpane.cli.showing.tables import table_of
    from counterpane.library.knitting import noting

    with library_at(options.store) as services:
        noting.require_recipe(services, options.which)
        found = list(noting.everything(services, options.sort, options.which))
    if options.json:
        output.put_json({"items": found})
        return endings.DONE
    with output.page() as console:
        table = table_of("Number", "Whose", "At", "Edition", "Says")
        for each in found:
            says = each.get("answer") or f"{each.get('yarn') or ''} {each.get('dye_lot') or ''}".strip()
            edition = str(each.get("edition") or "")
            table.add_row(str(each["number"]), each["whose"] or each["whose_key"], each["at"][:10], edition, says)
        console.print(table)
    return endings.DONE


def show(options: argparse.Namespace) -> int:
    """Show one with what follows from it."""
    from counterpane.cli.showing import jottings
    from counterpane.library.knitting.shown import shown

    with library_at(options.store) as services:
        told = shown(services, _which(options))
    return _end(options, told, jottings.words_of(told))


def take_back(options: argparse.Namespace) -> int:
    """Take one back; whoever wrote it down may."""
    from counterpane.library.knitting import noting
    from counterpane.library.ports import Holder

    with library_at(options.store) as services:
        holder = Holder("", "contributor", options.by, services.now())
        told = noting.take_back(services, _which(options), options.say, holder)
    return _end(options, told, [f"took {told['sort']} {told['number']} of {told['recipe']} back"])


def tell_knitted(options: argparse.Namespace) -> int:
    """Hold all test knits of a recipe against their plans."""
    from counterpane.cli.showing import jottings
    from counterpane.library.knitting import knitted

    with library_at(options.store) as services, output.waiting("working the plans out"):
        found = knitted.knitted(services, options.which)
    return _end(options, found, jottings.words_of_knitted(found))


def tell_rows(options: argparse.Namespace) -> int:
    """List the rows that were asked about or answered."""
    from counterpane.cli.showing import jottings
    from counterpane.library.knitting import knitted

    with library_at(options.store) as services:
        found = knitted.by_row(services, options.which)
    return _end(options, found, jottings.words_of_rows(found))
