"""`counterpane lesson`: a recipe told for a class."""

from __future__ import annotations

import argparse
from typing import TYPE_CHECKING, Any

from counterpane.cli import endings, output
from counterpane.cli.options import folder, session, take_input, take_store, take_terms

if TYPE_CHECKING:
    from counterpane.craft.constructions import Plan
    from counterpane.craft.teaching import Lesson
    from counterpane.library.plans.known import Known

NAME = "lesson"
ABOUT = """Tell a recipe for a class: each step of its sampler, what is seen, what goes wrong, the pieces to prepare.

The input is a plan request or a recipe in TOML or JSON. The class works the sampler, the smallest piece that shows
every change of the blanket. Minutes are an estimate. The exit status is 1 where no plan can be made of the input."""
EXAMPLES = """examples:
  $ counterpane lesson blanket.toml --as text
  $ counterpane lesson blanket.toml --as html --hand left --out lesson.html
  $ counterpane lesson blanket.toml --as markdown --terms uk --sessions-of 90 --learners practised"""
FORMS = ("text", "markdown", "html", "json")


def declare(parser: argparse.ArgumentParser) -> None:
    """Add the options."""
    take_input(parser, "a plan request or recipe, TOML or JSON")
    parser.add_argument(
        "--as", dest="form", metavar="FORM", default="text", help=f"one of {', '.join(FORMS)} (text if not given)"
    )
    hands = "left tells it for left-handers who work mirrored (right if not given)"
    parser.add_argument("--hand", choices=("right", "left"), help=hands)
    for_whom = "for whom the minutes are reckoned (beginners if not given)"
    parser.add_argument("--learners", choices=("beginners", "practised"), help=for_whom)
    minutes = "the minutes of one session (60 if not given)"
    parser.add_argument("--sessions-of", dest="session", type=session, metavar="MINUTES", help=minutes)
    take_terms(parser, "US terms if not given")
    parser.add_argument("--out", type=folder, metavar="PATH", help="write into this file instead of standard output")
    take_store(parser, "else the parts that ship with the program")


def run(options: argparse.Namespace) -> int:
    """Plan, tell the lesson, and put it where it was asked for."""
    from counterpane.cli.planning import bench_over, planned, read_request, show_refusal
    from counterpane.library.patterns.lessons import lesson_on

    if options.form not in FORMS:
        raise endings.Unreadable(f"a lesson cannot be written as {options.form!r}", f"Forms are {', '.join(FORMS)}.")
    asked = read_request(options.file)
    with output.waiting("planning"), bench_over(asked.content, options.store) as bench:
        made = planned(asked.content, bench)
        if made.plan is None:
            return show_refusal(asked, made)
        told = lesson_on(made.plan, {**asked.content, **_manner(options), "title": asked.title}, bench.known)
        document = _written(options.form, told, made.plan, bench.known)
    output.deliver(document, options.out)
    return endings.FOUND if made.has_errors else endings.DONE


def _manner(options: argparse.Namespace) -> dict[str, Any]:
    return {
        "terms": options.terms,
        "hand": options.hand,
        "learners": options.learners,
        "session_minutes": options.session,
    }


def _written(form: str, told: Lesson, plan: Plan, known: Known) -> str | bytes:
    from counterpane.library.patterns.lessons import pictures_of
    from counterpane.press import lesson

    if form == "json":
        return output.as_json({"lesson": lesson.as_data(told)})
    document = lesson.FORMS[form](told, pictures_of(plan, told, known) if form == "html" else ())
    return document if form == "html" else document.decode()
