"""`counterpane submit`: components from files into a library, and each of them handed in to be reviewed."""

from __future__ import annotations

import argparse
from collections.abc import Iterator
from pathlib import Path
from typing import TYPE_CHECKING, Any

from counterpane.cli import endings, output
from counterpane.cli.configuring import library_at
from counterpane.cli.options import person, take_json, take_store

if TYPE_CHECKING:
    from counterpane.library.services import Services

NAME = "submit"
ABOUT = """Put components into a library and hand them in to be reviewed.

FILE is a component as TOML, as `counterpane adopt` writes it; of a folder, every TOML file in it is taken. One that is
there already gets a next revision, if the same person added it. The program looks at each at once: the mathematics, the
wording, what is told of safety, the licence, and what it is like."""
EXAMPLES = """examples:
  $ counterpane submit ridge.toml --by Odile --say "Worked in three yarns." --store season.db
  $ counterpane submit parts --by Odile --store season.db"""
MOST_FILES = 1_000
"""Files of a folder that are taken at once; house."""


def declare(parser: argparse.ArgumentParser) -> None:
    """Add the options."""
    parser.add_argument("file", metavar="FILE", help="a component as TOML, or a folder of them")
    parser.add_argument("--by", type=person, required=True, metavar="NAME", help="who hands it in")
    parser.add_argument("--say", metavar="TEXT", default="", help="what whoever reads it should know")
    take_store(parser)
    take_json(parser)


def run(options: argparse.Namespace) -> int:
    """Hand in each file; the status is 1 where one does not hold."""
    status = endings.DONE
    with library_at(options.store) as services:
        for place in _files(options.file):
            told = _handed_in(services, place, options)
            if told is None:
                status = endings.FOUND
            elif options.json:
                output.put_json(told)
            else:
                output.put("\n".join(_words(told)) + "\n")
    return status


def _files(where: str) -> Iterator[str]:
    if not Path(where).is_dir():
        yield where
        return
    found = sorted(Path(where).rglob("*.toml"))[: MOST_FILES + 1]
    if not found or len(found) > MOST_FILES:
        said = "no TOML file" if not found else f"more than {MOST_FILES:,} TOML files"
        raise endings.Unreadable(f"{where}: {said} in this folder", "Name a folder with components.")
    yield from map(str, found)


def _handed_in(services: Services, place: str, options: argparse.Namespace) -> dict[str, Any] | None:
    """Return the submission; None where the component does not hold, which has then been said."""
    from counterpane.cli.documents import document_of
    from counterpane.cli.inputs import read_text
    from counterpane.cli.planning import refuse_misfits
    from counterpane.library.errors import Refused
    from counterpane.library.ports import Holder
    from counterpane.library.review import submissions
    from counterpane_schema.component import ComponentContent

    content = document_of(read_text(place))
    refuse_misfits(ComponentContent(), content, place, "a component")
    holder = Holder("", "contributor", options.by, services.now())
    try:
        with output.waiting(f"handing in {place}"):
            slug = _kept(services, ComponentContent().load(content), holder)
            return submissions.submit(services, {"component": slug, "say": options.say}, holder)
    except Refused as refusal:
        for each in refusal.findings:
            output.tell(f"{place}: {each.severity}: {each.message} {each.hint} ({each.rule})")
        return None


def _kept(services: Services, content: dict[str, Any], holder: Any) -> str:
    from counterpane.library.errors import Taken
    from counterpane.library.parts import components
    from counterpane.library.review import standing

    try:
        return components.add(services, content, holder.name).slug
    except Taken:
        slug = str(content["slug"])
        standing.require_owner(services, "component", slug, holder)
        return components.COMPONENTS.revise(services, slug, content, None, holder.name).slug


def _words(told: dict[str, Any]) -> Iterator[str]:
    """Give what the program found, a line each."""
    checks = told["checks"]
    yield f"handed in {told['slug']} as submission {told['number']}, sha256 {told['sha256']}"
    yield f"  mathematics: {'it holds' if checks['mathematics']['holds'] else 'it does not hold'}"
    yield f"  wording: {len(checks['wording']) or 'no'} finding{'' if len(checks['wording']) == 1 else 's'}"
    yield from (f"    {each['severity']} {each['rule']}: {each['message']}" for each in checks["wording"])
    missing = ", ".join(checks["safety"]["not_told"])
    yield f"  safety: {f'not told: {missing}' if missing else 'everything is told'}"
    licence = checks["licence"]
    yield f"  licence: {licence['name']}{'' if licence['known'] else ', which is none that a library takes'}"
    yield from (f"  like {each['slug']}: {each['said']}" for each in checks["alike"])
