"""`counterpane grade`: one recipe in several sizes, with the counts in brackets."""

from __future__ import annotations

import argparse
from pathlib import Path
from typing import Any

from counterpane.cli import endings, output
from counterpane.cli.options import folder, take_input, take_store, take_terms

FORMS = ("text", "markdown", "json")
NAME = "grade"
ABOUT = """Grade a recipe into several sizes: every size planned, and one pattern with the counts in brackets.

The input is a plan request or a recipe in TOML or JSON; its own size is left aside. A size is a name, as `counterpane
sizes` lists them, or WIDTHxLENGTH in centimetres, and may be called otherwise: "small=60x80". As JSON it is what the
API gives: every size with its counts, repeats, finished size and findings, and the rows with one count a size. The
exit status is 1 where a size cannot be planned."""
EXAMPLES = """examples:
  $ counterpane grade blanket.toml --sizes preemie,pram,cot
  $ counterpane grade blanket.toml --sizes small=60x80,large=90x120 --borders in-proportion --as text"""


def declare(parser: argparse.ArgumentParser) -> None:
    """Add the options."""
    take_input(parser, "a plan request or recipe, TOML or JSON")
    parser.add_argument("--sizes", required=True, metavar="SIZE,SIZE…", help="the sizes, from small to large")
    parser.add_argument("--sample", type=int, metavar="N", help="the size, from 1, that the borders are meant for (1)")
    parser.add_argument(
        "--borders", choices=("same", "in-proportion"), help="keep borders as they are, or their share (same)"
    )
    take_terms(parser, "US terms if not given")
    parser.add_argument("--as", dest="form", choices=FORMS, help="write the pattern instead of a table of the sizes")
    parser.add_argument("--text", dest="form", action="store_const", const="text", help="the same as --as text")
    parser.add_argument("--json", dest="form", action="store_const", const="json", help="the same as --as json")
    parser.add_argument("--out", type=folder, metavar="PATH", help="write into this file (as text if not said)")
    take_store(parser, "else the parts that ship with the program")


def run(options: argparse.Namespace) -> int:
    """Plan every size and show them, or put the pattern where it was asked for."""
    from counterpane.cli.documents import document_of
    from counterpane.cli.inputs import read_text
    from counterpane.cli.planning import answered_over, asked_of, refuse_misfits
    from counterpane.library.plans.grading import plan_grade
    from counterpane.press.graded import as_graded_markdown, as_graded_text
    from counterpane_schema.grade import GradeRequest

    given = read_text(options.file)
    asked = asked_of(document_of(given))
    content = {name: value for name, value in asked.content.items() if name != "size"} | _asked(options, asked.title)
    refuse_misfits(GradeRequest(), content, given.name, "a plan request in several sizes")
    shown = as_graded_markdown if options.form == "markdown" else None
    with output.waiting("planning"):
        made = answered_over(content, options.store, lambda of, bench: plan_grade(of, bench, as_graded_text, shown))
    if options.form == "json" or (made.done and (options.form or options.out)):
        text = output.as_json(made.answer) if options.form == "json" else made.answer["text"]
        _deliver(text, options.out if made.done else None)
    else:
        from counterpane.cli.showing import grading, plans

        with output.page() as console:
            draw = grading.draw if made.done else plans.draw_refusal
            draw(console, asked.title or "A blanket", made.answer)
    return endings.DONE if made.done else endings.FOUND


def _deliver(text: str, path: Path | None) -> None:
    if path is None:
        output.put(text)
    else:
        output.save(path, text)
        output.tell(f"wrote {path}")


def _asked(options: argparse.Namespace, title: str | None) -> dict[str, Any]:
    said = {"sizes": [_size(each.strip()) for each in options.sizes.split(",")], "title": title}
    given = {"sample": options.sample, "borders": options.borders, "terms": options.terms}
    return {name: value for name, value in (said | given).items() if value is not None}


def _size(text: str) -> dict[str, Any]:
    """Return a size as it was typed: a name, or "60x80" in centimetres, with what it is called before a "=" sign."""
    from decimal import Decimal, InvalidOperation

    called, _, size = text.rpartition("=")
    name = {"name": called.strip()} if called else {}
    width, times, length = size.partition("x")
    try:
        return name | {"width_cm": Decimal(width), "length_cm": Decimal(length)} if times else name | {"named": size}
    except InvalidOperation:
        return name | {"named": size}
