"""`counterpane matrix`: every body against every border, edge, cast-on and bind-off."""

from __future__ import annotations

import argparse
from collections.abc import Mapping, Sequence
from pathlib import Path
from typing import Any

from counterpane.cli import endings, output
from counterpane.cli.options import beside, slug, stitches, take_json

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
    from counterpane.library.parts.matrix_picture import as_svg
    from counterpane.library.parts.matrix_text import as_text

    with output.waiting("working out the matrix"):
        answer = _matrix(options)
    if options.picture is not None:
        output.save(options.picture, as_svg(answer))
        output.put(f"{options.picture}\n")
    elif options.json:
        output.put_json(answer)
    else:
        output.put(as_text(answer))
    return endings.DONE


def _matrix(options: argparse.Namespace) -> dict[str, Any]:
    """Work out the matrix; that of all bodies at all their counts is worked out once for each version."""
    from counterpane.at_hand import answer_at_hand

    asked = _asked(options)
    if asked.keys() & {"body", "part", "count"}:
        return _worked_out(options, asked)
    name = "-".join(("matrix", *(f"{name}-{value}" for name, value in asked.items())))
    answer: dict[str, Any] = answer_at_hand(name, lambda: _worked_out(options, asked))
    return answer


def _worked_out(options: argparse.Namespace, asked: Mapping[str, Any]) -> dict[str, Any]:
    """Work out the matrix of the starters alone that it holds; a library tells of one named that is none of them."""
    from counterpane.at_hand import open_starters
    from counterpane.library.parts.matrix import BESIDE, WITH, matrix, matrix_of
    from counterpane.seeding import load_component, load_vocabulary

    bodies = _starters(options.body, ("body",))
    others = _starters(options.part, (options.kind,) if options.kind else WITH)
    if not bodies or not others:
        return matrix(open_starters(), **asked)
    rows, columns = (tuple(map(load_component, slugs)) for slugs in (bodies, others))
    return matrix_of(rows, columns, load_vocabulary(), asked.get("count"), asked.get("beside", BESIDE))


def _starters(slug: str | None, kinds: Sequence[str]) -> list[str]:
    """Return the slugs of the starters of these kinds, in the order of a library; of a slug it alone, if it is one."""
    from counterpane.seeding import shipped

    found = shipped()
    return [each for kind in kinds for each in sorted(found) if found[each] == kind and slug in (None, each)]


def _asked(options: argparse.Namespace) -> dict[str, Any]:
    asked = {name: getattr(options, name) for name in ("body", "part", "kind", "count", "beside")}
    return {name: value for name, value in asked.items() if value is not None}
