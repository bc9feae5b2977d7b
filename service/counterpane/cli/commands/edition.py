"""`counterpane edition`: what is published of a kept recipe, and what changed between two editions."""

from __future__ import annotations

import argparse
import sys
from collections.abc import Callable
from typing import TYPE_CHECKING, Any

from counterpane.cli import endings, output
from counterpane.cli.configuring import library_at
from counterpane.cli.options import folder, number, person, slug, take_json, take_store, take_terms

if TYPE_CHECKING:
    from counterpane.craft.stitches import Terms
    from counterpane.library.services import Services

FORMS = ("text", "markdown", "html", "pdf", "json")
PAPERS = ("a4", "letter")
NAME = "edition"
ABOUT = """Publish a kept recipe as an edition, list its editions, show one, and tell what changed.

An edition has a number and a date, which stand on every page of its pattern, and never changes. An erratum is worked
out from two editions: each place that changed, both texts, the sizes hit, and what to do for who is past that row.
`edition corrections` tells whoever has a copy what was put right since, safety first: it stands on each page.
`edition touched` drafts one for every recipe that a corrected component touches, and keeps none of them."""
EXAMPLES = """examples:
  $ counterpane edition add first-frost --by Ines --date 2026-11-26 --store season.db
  $ counterpane edition list first-frost --store season.db
  $ counterpane edition show first-frost 1 --as text --store season.db
  $ counterpane edition corrections first-frost 1 --store season.db
  $ counterpane edition touched waffle --store season.db"""


def declare(parser: argparse.ArgumentParser) -> None:
    """Add the acts, each with its options."""
    acts = parser.add_subparsers(metavar="ACT", required=True)
    _declare_add(_act(acts, "add", "publish the next edition of a recipe", add))
    _act(acts, "list", "list the editions of a recipe", list_all)
    place = _act(acts, "show", "write the pattern of an edition", show)
    place.add_argument("number", metavar="N", type=number, nargs="?", help="its number (else the latest)")
    place.add_argument("--as", dest="form", choices=FORMS, default="text", help="the form (text if not given)")
    place.add_argument("--size", metavar="NAME", help="the size, where it has several (else the first)")
    place.add_argument("--paper", choices=PAPERS, default="a4", help="for html and pdf (a4 if not given)")
    place.add_argument("--out", type=folder, metavar="PATH", help="write into this file instead of standard output")
    take_terms(place, "US terms if not given")
    place = _act(acts, "errata", "tell what changed up to an edition", tell_errata)
    place.add_argument("number", metavar="N", type=number, nargs="?", help="its number (else the latest)")
    place.add_argument("--since", type=number, metavar="N", help="the edition in hand (else the one before)")
    take_terms(place, "US terms if not given")
    take_json(place)
    place = _act(acts, "corrections", "tell what was corrected since an edition, safety first", tell_corrections)
    place.add_argument("number", metavar="N", type=number, help="the number of the edition in hand")
    take_terms(place, "US terms if not given")
    take_json(place)
    place = _act(acts, "touched", "draft the errata that a corrected component asks for", tell_touched, "component")
    take_terms(place, "US terms if not given")
    take_json(place)


def _declare_add(place: argparse.ArgumentParser) -> None:
    place.add_argument("--by", type=person, required=True, metavar="NAME", help="who publishes it")
    place.add_argument("--date", metavar="DAY", help="the day, such as 2026-11-26 (else today)")
    place.add_argument("--revision", metavar="HASH", help="the revision of the recipe (else the latest)")
    place.add_argument("--reason", choices=("correction", "safety"), help="why it follows the one before")
    place.add_argument("--note", metavar="TEXT", help="what the designer adds to the erratum")
    place.add_argument("--size", dest="sizes", action="append", metavar="NAME", help="a named size; give two or more")


def _act(
    acts: Any, name: str, about: str, act: Callable[[argparse.Namespace], int], what: str = "recipe"
) -> argparse.ArgumentParser:
    plain = argparse.RawDescriptionHelpFormatter
    place: argparse.ArgumentParser = acts.add_parser(
        name, help=about, description=ABOUT, epilog=EXAMPLES, formatter_class=plain, allow_abbrev=False
    )
    place.set_defaults(act=act)
    place.add_argument("which", metavar="SLUG", type=slug, help=f"the {what}")
    take_store(place)
    return place


def run(options: argparse.Namespace) -> int:
    """Do what was asked."""
    status: int = options.act(options)
    return status


def add(options: argparse.Namespace) -> int:
    """Publish the next edition of a recipe."""
    from counterpane.cli.planning import refuse_misfits
    from counterpane.library.editions import editions
    from counterpane_schema.edition import EditionContent

    given = {name: getattr(options, name) for name in ("date", "revision", "reason", "note")}
    given["sizes"] = [{"named": each} for each in options.sizes] if options.sizes else None
    content = {name: value for name, value in given.items() if value is not None}
    refuse_misfits(EditionContent(), content, "the options", "an edition")
    with library_at(options.store) as services, output.waiting("writing the edition"):
        kept = editions.publish(services, options.which, EditionContent().load(content), options.by)
    output.put(f"published edition {kept.number} of {kept.slug}, sha256 {kept.sha256}\n")
    return endings.DONE


def list_all(options: argparse.Namespace) -> int:
    """List the editions of a recipe, the first one first."""
    from counterpane.cli.showing.tables import table_of
    from counterpane.library.editions import editions

    with library_at(options.store) as services, output.page() as console:
        table = table_of("Edition", "Date", "Reason", "SHA-256")
        for card in editions.cards(services, options.which):
            table.add_row(str(card["number"]), card["date"], card["reason"], card["sha256"])
        console.print(table)
    return endings.DONE


def show(options: argparse.Namespace) -> int:
    """Write the pattern of an edition in a form."""
    from counterpane.library.editions.edition_files import Asked, written

    if options.form == "pdf" and options.out is None and sys.stdout.isatty():
        raise endings.Unreadable("a PDF is no text, and standard output is a terminal", "Name a file with --out.")
    with library_at(options.store) as services, output.waiting("writing the edition"):
        asked = Asked(options.which, _number(services, options), options.terms or "us", options.size)
        made = written(services, asked, options.form, options.paper)
    output.deliver(made if options.form in ("html", "pdf") else made.decode(), options.out)
    return endings.DONE


def tell_errata(options: argparse.Namespace) -> int:
    """Tell what changed up to an edition."""
    from counterpane.library.editions import editions, errata

    with library_at(options.store) as services:
        terms: Terms = options.terms or "us"
        found = editions.erratum(services, options.which, _number(services, options), options.since, terms)
    if options.json:
        output.put_json(found)
    else:
        output.put(errata.words_of(found))
    return endings.DONE


def tell_corrections(options: argparse.Namespace) -> int:
    """Tell what was corrected since an edition; the status is 1 where something was."""
    from counterpane.library.editions import corrections

    with library_at(options.store) as services:
        found = corrections.since(services, options.which, options.number, options.terms or "us")
    if options.json:
        output.put_json(found)
    else:
        output.put(corrections.words_of(found))
    return endings.FOUND if found["corrected"] else endings.DONE


def tell_touched(options: argparse.Namespace) -> int:
    """Draft the errata that a corrected component asks for; the status is 1 where a recipe fits no more."""
    from counterpane.library.editions import touched

    with library_at(options.store) as services, output.waiting("planning what it touches again"):
        found = tuple(touched.everything(services, options.which, options.terms or "us"))
    if options.json:
        output.put_json({"component": options.which, "items": found})
    else:
        output.put(touched.words_of(options.which, found))
    return endings.DONE if all(each["fits"] for each in found) else endings.FOUND


def _number(services: Services, options: argparse.Namespace) -> int:
    from counterpane.library.editions import editions

    return options.number or max(1, len(editions.history(services, options.which)))
