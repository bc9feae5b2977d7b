"""`counterpane midway`: a piece in the middle, by what was weighed and measured."""

from __future__ import annotations

import argparse
from typing import Any

from counterpane.cli import endings, output
from counterpane.cli.options import amount, rows, take_input, take_json, take_store

NAME = "midway"
ABOUT = """Look up in the middle of a piece: rows left of the yarn, and the plan at the gauge that came out.

The input is the plan request or recipe that the piece was begun by, in TOML or JSON. Weigh what is left for the rows
that it does for; measure after 10 to 15 cm for the plan with the cast-on kept."""
EXAMPLES = """examples:
  $ counterpane midway blanket.toml --rows-done 112 --left-g 210 --used-g 152
  $ counterpane midway blanket.toml --rows-done 60 --width-cm 72 --length-cm 14.6 --over-rows 44"""

WEIGHED = (
    ("left_g", "grams of yarn that are left"),
    ("used_g", "grams of yarn that the piece has taken so far"),
    ("scale_g", "the smallest step of the scales (1 g)"),
    ("reserve_g", "grams to keep in hand (the margin on what follows the body)"),
)
MEASURED = (
    ("width_cm", "the width on the needle, flat and unstretched"),
    ("length_cm", "the length of --over-rows rows of the body, else of all rows"),
)


def declare(parser: argparse.ArgumentParser) -> None:
    """Add the options."""
    take_input(parser, "the plan request or recipe of the piece, TOML or JSON")
    parser.add_argument("--rows-done", type=rows, required=True, metavar="N", help="rows worked since the cast-on")
    for name, told in (*WEIGHED, *MEASURED):
        parser.add_argument(f"--{name.replace('_', '-')}", type=amount, metavar="NUMBER", help=told)
    parser.add_argument("--over-rows", type=rows, metavar="N", help="rows of the body over which the length was taken")
    parser.add_argument("--colour", metavar="NAME", help="the colour of the yarn that was weighed (the first)")
    take_json(parser)
    take_store(parser, "else the parts that ship with the program")


def run(options: argparse.Namespace) -> int:
    """Work it out and show it, or why the piece cannot be planned."""
    from counterpane.cli.planning import answered_over, read_request
    from counterpane.library.yarn.yarn_planning import plan_midway

    at = _at(options)
    if at.get("left_g") is None and at["measured"] is None:
        hint = "Give --left-g for the rows left, or --width-cm and --length-cm for the plan at the true gauge."
        raise endings.Unreadable("nothing is weighed or measured", hint)
    asked = read_request(options.file)
    with output.waiting("planning"):
        made = answered_over({**asked.content, "at": at}, options.store, plan_midway)
    if options.json:
        output.put_json(made.answer)
    else:
        from counterpane.cli.showing import midway, plans

        with output.page() as console:
            draw = midway.draw if made.done else plans.draw_refusal
            draw(console, asked.title or "A blanket", made.answer)
    return endings.DONE if made.done else endings.FOUND


def _at(options: argparse.Namespace) -> dict[str, Any]:
    """Return how far the piece has come, as the API takes it."""
    weighed = {name: getattr(options, name) for name, _ in WEIGHED}
    measured = {name: getattr(options, name) for name, _ in MEASURED}
    known = any(value is not None for value in measured.values())
    return {
        "rows_done": options.rows_done,
        **weighed,
        "colour": options.colour,
        "measured": {**measured, "rows": options.over_rows} if known else None,
    }
