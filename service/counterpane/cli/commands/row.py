"""`counterpane row`: what should be on the needle after a row, and where a count went wrong."""

from __future__ import annotations

import argparse

from counterpane.cli import endings, output
from counterpane.cli.options import rows, stitches, take_input, take_json, take_store, take_terms

NAME = "row"
ABOUT = """Tell what should be on the needle after a row, how far the piece is, and where a count went wrong.

The input is the plan request or recipe that the piece was begun by, in TOML or JSON. Give what you counted, and each
slip that leads to it is named, the likeliest first, with what it looks like and how it is put right."""
EXAMPLES = """examples:
  $ counterpane row blanket.toml --row 47
  $ counterpane row blanket.toml --row 47 --stitches 131
  $ counterpane row blanket.toml --row 47 --stitches 131 --sure 40 --json
  $ counterpane row blanket.toml --row 47 --gauge-stitches 20 --gauge-rows 28"""


def declare(parser: argparse.ArgumentParser) -> None:
    """Add the options."""
    take_input(parser, "the plan request or recipe of the piece, TOML or JSON")
    parser.add_argument("--row", type=rows, required=True, metavar="N", help="the row worked last, from the cast-on")
    parser.add_argument("--stitches", type=stitches, metavar="N", help="what you counted after it")
    parser.add_argument("--sure", type=rows, metavar="N", help="the last row after which the count was surely right")
    parser.add_argument("--gauge-stitches", metavar="N", help="the stitches to 10 cm that the piece comes out at")
    parser.add_argument("--gauge-rows", metavar="N", help="the rows to 10 cm; both are given, or neither")
    take_terms(parser, "US terms if not given")
    take_json(parser)
    take_store(parser, "else the parts that ship with the program")


def run(options: argparse.Namespace) -> int:
    """Work it out and show it, or why the piece cannot be planned."""
    from counterpane.cli.planning import answered_over, read_request
    from counterpane.library.knitting.on_needle import at_row

    asked = read_request(options.file)
    at = {"row": options.row, "stitches": options.stitches, "sure": options.sure}
    with output.waiting("planning"):
        made = answered_over(
            {**asked.content, "at": at, "terms": options.terms, "to": _gauge(options)}, options.store, at_row
        )
    if options.json:
        output.put_json(made.answer)
    else:
        from counterpane.cli.showing import on_needle, plans

        with output.page() as console:
            draw = on_needle.draw if made.done else plans.draw_refusal
            draw(console, asked.title or "A blanket", made.answer)
    return endings.DONE if made.done else endings.FOUND


def _gauge(options: argparse.Namespace) -> dict[str, str] | None:
    """Return the gauge that the piece comes out at; None where none is told, Unreadable for half of one."""
    told = {"stitches": options.gauge_stitches, "rows": options.gauge_rows}
    if None in told.values():
        if any(told.values()):
            raise endings.Unreadable("A gauge is --gauge-stitches and --gauge-rows, both to 10 cm.")
        return None
    return told | {"over_cm": "10"}
