"""`counterpane adopt`: from the words of a texture or border to a component."""

from __future__ import annotations

import argparse
from collections.abc import Iterable, Mapping
from pathlib import Path
from typing import TYPE_CHECKING, Any

from counterpane.cli import endings, output
from counterpane.cli.inputs import Given, read_text
from counterpane.cli.options import folder, slug, take_input, take_json, take_terms, year

if TYPE_CHECKING:
    from counterpane.craft.findings import Finding
    from counterpane.library.errors import Refused
    from counterpane.library.parts.adopting import Adoption

NAME = "adopt"
ABOUT = """Make a component of the words of a texture, border or selvedge, with its stated multiple.

The rows are read and proved as they are for the library. What follows from them is filled in; the
component is written as TOML, and what is still to be said is asked for on standard error: nothing is
made up. The exit status is 0 for a whole component, 1 where the text does not hold or a question is
open."""
EXAMPLES = """examples:
  $ counterpane adopt rows.txt --kind body --name "Six rib" --licence CC0-1.0 --author anna --source common-practice
  $ counterpane adopt rows.txt --kind border --name Ribs --licence CC0-1.0 --author anna --source common-practice \
--across-corner no --json
  $ counterpane adopt rows.txt --kind body --name Ribs --licence CC0-1.0 --author anna --source common-practice \
--into parts"""

NEXT = (
    "to use it: a plan takes its rows as they stand, as in body = { text = '''…''' };\n"
    "  a library takes it by its name once its words are sent to POST /v1/components"
)
STATE_THE_MULTIPLE = """note: as written it takes exactly {0} stitches. Where it is worked over and over across the
  blanket, say so above its first row, as in “(multiple of {0} sts)”."""
KINDS = ("body", "border", "selvedge")
SLIPS = ("kwise-front", "kwise-back", "pwise-front", "pwise-back")
_TEXTS = {
    "name": "what it is called (else the title of the text)",
    "summary": "a sentence about it (else derived from the rows)",
    "licence": "the licence of its words: CC0-1.0, CC-BY-4.0 or CC-BY-SA-4.0",
    "author": "who wrote its words: a name or a pseudonym",
    "source": "where it comes from: the slug of a source",
    "where": "the place in that source",
    "printed": "what the source itself says of its stitches, word for word",
}
_OPTIONS = {"across_corner": "--across-corner yes|no", "slipped_edge": f"--slipped {'|'.join(SLIPS)}"}


def declare(parser: argparse.ArgumentParser) -> None:
    """Add the options."""
    take_input(parser, "a text of rows")
    parser.add_argument("--kind", choices=KINDS, help="which part of a blanket it is")
    for name, about in _TEXTS.items():
        parser.add_argument(f"--{name}", metavar="TEXT", help=about)
    parser.add_argument("--slug", type=slug, metavar="SLUG", help="the slug it is kept under (else made of the name)")
    parser.add_argument("--year", type=year, metavar="YEAR", help="the year of that source")
    parser.add_argument("--across-corner", choices=("yes", "no"), help="whether a border goes on over the corner")
    parser.add_argument("--slipped", choices=SLIPS, help="how a selvedge slips its edge stitch, and where the yarn is")
    parser.add_argument("--into", type=folder, metavar="DIR", help="write it to DIR/KIND/SLUG.toml when it is whole")
    take_terms(parser, "else as the text suggests")
    take_json(parser)


def run(options: argparse.Namespace) -> int:
    """Adopt the text and write the component, or say what does not hold."""
    from counterpane.library.errors import Refused
    from counterpane.library.parts.adopting import adopt
    from counterpane.seeding import load_vocabulary

    given = read_text(options.file)
    try:
        with output.waiting(f"adopting {given.name}"):
            adoption = adopt(given.text, _answers(options), load_vocabulary())
    except Refused as refusal:
        return _refuse(given, refusal, options.json)
    _tell(given, adoption.findings)
    _write(adoption, options)
    _tell_same(adoption)
    _ask(adoption)
    _tell_source(options.source)
    return endings.FOUND if adoption.questions else endings.DONE


def _tell_same(adoption: Adoption) -> None:
    """Say which parts that ship with the program have the same texture."""
    from counterpane.craft.component import component_of
    from counterpane.library.parts.textures import of_same_texture
    from counterpane.seeding import load_components, load_vocabulary

    component = component_of({**adoption.content, "kind": adoption.content["kind"] or "body"})
    with output.waiting("comparing its texture"):
        same = of_same_texture(component, load_components(), load_vocabulary())
    if same:
        output.tell(f"note: the same texture, begun elsewhere, turned or mirrored as it may be: {', '.join(same)}.")


def _tell_source(source: str | None) -> None:
    """Say where a source is to be described that does not ship with the program."""
    from counterpane.seeding import load_sources

    if source and source not in load_sources():
        known = ", ".join(sorted(load_sources()))
        output.tell(f"note: {source} is no source that ships here ({known}): describe it in sources/{source}.toml.")


def _answers(options: argparse.Namespace) -> dict[str, Any]:
    said: dict[str, Any] = {name: getattr(options, name) for name in (*_TEXTS, "kind", "slug", "year", "terms")}
    if options.across_corner:
        said["across_corner"] = options.across_corner == "yes"
    if options.slipped:
        said["slipped_edge"] = dict(zip(("manner", "yarn"), options.slipped.split("-"), strict=True))
    return {name: value for name, value in said.items() if value not in (None, "")}


def _refuse(given: Given, refusal: Refused, as_json: bool) -> int:
    _tell(given, refusal.findings)
    if as_json:
        from counterpane.api import problems

        problem = problems.of(refusal)
        output.put_json(problem.document("") if problem else {"detail": str(refusal)})
    return endings.FOUND


def _tell(given: Given, findings: Iterable[Finding]) -> None:
    for each in findings:
        place = given.name if each.line is None else f"{given.name}:{each.line}:{each.column}"
        output.tell(f"{place}: {each.severity}: {each.message} {each.hint} ({each.rule})")


def _write(adoption: Adoption, options: argparse.Namespace) -> None:
    from counterpane.press.component import as_seed

    for note in adoption.notes:
        output.tell(f"note: {note}")
    fixed = adoption.derived["fixed"]
    if fixed is not None and adoption.content["kind"] in (None, "body"):
        output.tell(STATE_THE_MULTIPLE.format(fixed))
    if options.json:
        asked = [{"pointer": each.pointer, "message": each.text} for each in adoption.questions]
        output.put_json({**adoption.content, "derived": adoption.derived, "questions": asked})
    elif options.into is None:
        output.put(as_seed(adoption.content, adoption.derived))
    elif not adoption.questions:
        _save(options.into, adoption.content, as_seed(adoption.content, adoption.derived))


def _save(into: Path, content: Mapping[str, Any], seed: str) -> None:
    path = into / content["kind"] / f"{content['slug']}.toml"
    if path.exists():
        raise endings.NotPermitted(f"{path} is there already", "Choose another slug with --slug, or move that file.")
    output.save(path, seed)
    output.put(f"{path}\n")
    output.tell(NEXT)


def _ask(adoption: Adoption) -> None:
    for each in adoption.questions:
        name = each.pointer.removeprefix("/")
        option = _OPTIONS.get(name, f"--kind {'|'.join(KINDS)}" if name == "kind" else f"--{name} TEXT")
        output.tell(f"still to say: {each.text} Give it with {option}.")
