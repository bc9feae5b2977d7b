"""`counterpane matrix`: every body against every border, edge, cast-on and bind-off."""

from __future__ import annotations

import argparse
from pathlib import Path
from typing import TYPE_CHECKING, Any

from counterpane.cli import endings, output
from counterpane.cli.options import beside, slug, stitches, take_json

if TYPE_CHECKING:
    from counterpane.library.services import Services

NAME = "matrix"
ABOUT = """Hold every body against every border, edge, cast-on and bind-off of the starters: do their counts meet?

With one body, or one other part, each pair is told with its reason, its correction and what else is to
be said of it; many are shown as a table of letters."""
EXAMPLES = """examples:
  $ counterpane matrix --body waffle
  $ counterpane matrix --body waffle --count 139 --kind border
  $ counterpane matrix --kind border --json
  $ counterpane matrix --picture matrix.svg"""

KINDS = ("border", "selvedge", "cast-on", "bind-off")


def declare(parser: argparse.ArgumentParser) -> None:
    """Add the options."""
    parser.add_argument("--body", type=slug, metavar="SLUG", help="one body")
    parser.add_argument("--part", type=slug, metavar="SLUG", help="one border, selvedge, cast-on or bind-off")
    parser.add_argument("--kind", choices=KINDS, help="only parts of this kind")
    parser.add_argument("--count", type=stitches, metavar="N", help="with N stitches in the body, else at all counts")
    parser.add_argument(
        "--beside",
        type=beside,
        metavar="N",
        help="the ends run over N stitches more on each side than the body (else 6)",
    )
    parser.add_argument("--picture", type=Path, metavar="FILE", help="draw it to this file, as SVG")
    take_json(parser)


def run(options: argparse.Namespace) -> int:
    """Work out the matrix of the starters and show it."""
    from counterpane.library.matrix import matrix
    from counterpane.library.matrix_picture import as_svg
    from counterpane.library.matrix_text import as_text

    with output.waiting("working out the matrix"):
        answer = matrix(_library(options), **_asked(options))
    if options.picture is not None:
        output.save(options.picture, as_svg(answer))
        output.put(f"{options.picture}\n")
    elif options.json:
        output.put_json(answer)
    else:
        output.put(as_text(answer))
    return endings.DONE


def _library(options: argparse.Namespace) -> Services:
    """Return a library of the starters that the matrix holds beside each other; of all, where one named is none."""
    from counterpane.library.matrix import WITH
    from counterpane.seeding import shipped
    from counterpane.wiring import open_library, open_parts

    kinds = shipped()
    if not kinds.keys() >= {options.body, options.part} - {None}:
        return open_library()
    bodies = [options.body] if options.body else [slug for slug, kind in kinds.items() if kind == "body"]
    wanted = (options.kind,) if options.kind else WITH
    others = [options.part] if options.part else [slug for slug, kind in kinds.items() if kind in wanted]
    return open_parts(dict.fromkeys((*bodies, *others)))


def _asked(options: argparse.Namespace) -> dict[str, Any]:
    asked = {name: getattr(options, name) for name in ("body", "part", "kind", "count", "beside")}
    return {name: value for name, value in asked.items() if value is not None}
