"""`counterpane write`: a plan in words, for somebody to knit from."""

from __future__ import annotations

import argparse
import sys
from collections.abc import Mapping, Sequence
from typing import TYPE_CHECKING

from counterpane.cli import endings, output
from counterpane.cli.options import folder, take_input, take_profile, take_store, take_terms

if TYPE_CHECKING:
    from counterpane.cli.planning import Asked, Planned
    from counterpane.craft.pattern import Pattern
    from counterpane.craft.stitches import Terms
    from counterpane.library.known import Known
    from counterpane.press import Paper

PAGES = ("html", "pdf")
FORMS = ("text", "markdown", *PAGES, "json")
PAPERS = ("a4", "letter")
NAME = "write"
ABOUT = """Write the pattern of a plan: materials, gauge, every row with its counts, finishing and cautions.

The input is a plan request or a recipe in TOML or JSON. The exit status is 1 where no plan can be made of it."""
EXAMPLES = """examples:
  $ counterpane write blanket.toml --as text
  $ counterpane write blanket.toml --as markdown --terms uk --out blanket.md
  $ counterpane write blanket.toml --as pdf --paper letter --out blanket.pdf"""


def declare(parser: argparse.ArgumentParser) -> None:
    """Add the options."""
    take_input(parser, "a plan request or recipe, TOML or JSON")
    parser.add_argument("--as", dest="form", metavar="FORM", required=True, help=f"one of {', '.join(FORMS)}")
    take_terms(parser, "US terms if not given")
    parser.add_argument("--paper", choices=PAPERS, default="a4", help="for html and pdf (a4 if not given)")
    parser.add_argument("--out", type=folder, metavar="PATH", help="write into this file instead of standard output")
    take_store(parser, "else the parts that ship with the program")
    take_profile(parser)


def run(options: argparse.Namespace) -> int:
    """Plan, write, and put the pattern where it was asked for."""
    from counterpane.cli.planning import bench_over, planned, read_request, with_profile

    if options.form not in FORMS:
        raise endings.Unreadable(f"a pattern cannot be written as {options.form!r}", f"Forms are {', '.join(FORMS)}.")
    if options.form == "pdf" and options.out is None and sys.stdout.isatty():
        raise endings.Unreadable("a PDF is no text, and standard output is a terminal", "Name a file with --out.")
    asked = with_profile(read_request(options.file), options.profile)
    with output.waiting("planning and writing"), bench_over(asked.content, options.store) as bench:
        made = planned(asked.content, bench)
        terms: Terms = options.terms or "us"
        wanted = (options.form,)
        documents = written(asked, made, bench.known, wanted, terms, paper=options.paper) if made.plan else None
    if documents is None:
        return _refuse(asked, made, options.form)
    output.deliver(documents[options.form], options.out)
    return endings.FOUND if made.has_errors else endings.DONE


def written(
    asked: Asked, made: Planned, known: Known, forms: Sequence[str], terms: Terms, *, paper: Paper = "a4"
) -> Mapping[str, str | bytes]:
    """Return the pattern of a plan in each of these forms and in US or UK terms: as text, or as the bytes of a file."""
    pattern = _pattern(asked, made, known, terms)
    return {form: _text(pattern, form) for form in forms if form not in PAGES} | _pages(
        made, pattern, known, [form for form in forms if form in PAGES], paper
    )


def _text(pattern: Pattern, form: str) -> str:
    from counterpane.press.markdown import as_markdown
    from counterpane.press.text import as_text

    if form == "markdown":
        return as_markdown(pattern)
    if form == "text":
        return as_text(pattern)
    from counterpane.press.data import as_data

    return output.as_json({"pattern": as_data(pattern), "text": as_text(pattern)})


def _pages(made: Planned, pattern: Pattern, known: Known, forms: Sequence[str], paper: Paper) -> dict[str, bytes]:
    if not forms:
        return {}
    from counterpane.library.pages import pictures_for
    from counterpane.press.html import as_html
    from counterpane.press.pdf import as_pdf

    assert made.plan is not None
    drawn = pictures_for(made.plan, pattern, known.vocabulary, forms)
    presses = {"html": as_html, "pdf": as_pdf}
    return {form: presses[form](pattern, pictures, paper) for form, pictures in drawn.items()}


def _pattern(asked: Asked, made: Planned, known: Known, terms: Terms) -> Pattern:
    from counterpane.library.planning import pattern_of

    assert made.plan is not None
    return pattern_of(made.plan, {**asked.content, "terms": terms, "title": asked.title}, known)


def _refuse(asked: Asked, made: Planned, form: str) -> int:
    from counterpane.cli.planning import show_refusal

    if form == "json":
        output.put_json(made.answer)
        return endings.FOUND
    return show_refusal(asked, made)
