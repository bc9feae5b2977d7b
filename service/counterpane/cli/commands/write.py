"""`counterpane write`: a plan in words, for somebody to knit from."""

from __future__ import annotations

import argparse
import sys
from dataclasses import dataclass
from typing import TYPE_CHECKING, Any

from counterpane.cli import endings, output
from counterpane.cli.options import folder, take_input, take_profile, take_store, take_terms, take_units

if TYPE_CHECKING:
    from collections.abc import Sequence

    from counterpane.cli.planning import Asked, Planned
    from counterpane.craft.drawing import Picture
    from counterpane.craft.measures import Units
    from counterpane.craft.pattern import Pattern
    from counterpane.craft.rows.say import WordsKind
    from counterpane.craft.stitches import Terms
    from counterpane.library.plans.known import Known
    from counterpane.press import Paper

FORMS = ("text", "markdown", "html", "pdf", "json")
PAPERS = ("a4", "letter")
SHEETS = ("knitter", "designer")
NAME = "write"
ABOUT = """Write the pattern of a plan: materials, gauge, every row with its counts, finishing and cautions.

The input is a plan request or a recipe in TOML or JSON. The exit status is 1 where no plan can be made of it."""
EXAMPLES = """examples:
  $ counterpane write blanket.toml --as text
  $ counterpane write blanket.toml --as markdown --terms uk --out blanket.md
  $ counterpane write blanket.toml --as markdown --words full
  $ counterpane write blanket.toml --as html --units in --out blanket.html
  $ counterpane write blanket.toml --as text --language de --units cm
  $ counterpane write blanket.toml --as text --sheet designer
  $ counterpane write blanket.toml --as pdf --paper letter --out blanket.pdf"""


@dataclass(frozen=True, slots=True)
class Said:
    """In which terms, words and units a pattern is written, on which paper, and for whom."""

    terms: Terms = "us"
    units: Units = "both"
    paper: Paper = "a4"
    sheet: str = "knitter"
    language: str = ""
    words: WordsKind = "short"


AS_USUAL = Said()


def declare(parser: argparse.ArgumentParser) -> None:
    """Add the options."""
    take_input(parser, "a plan request or recipe, TOML or JSON")
    parser.add_argument("--as", dest="form", metavar="FORM", required=True, help=f"one of {', '.join(FORMS)}")
    take_terms(parser, "US terms if not given")
    parser.add_argument("--words", choices=("short", "full"), default="short", help="abbreviated if not given")
    take_units(parser)
    other = (
        "the code of a language, such as de; what is not translated stands in English, marked (English if not given)"
    )
    parser.add_argument("--language", metavar="CODE", default="en", help=other)
    for_whom = "the knitter's pattern, or the designer's sheet with the sums behind each number (knitter if not given)"
    parser.add_argument("--sheet", choices=SHEETS, default="knitter", help=for_whom)
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
    language = _language(options)
    asked = with_profile(read_request(options.file), options.profile)
    with output.waiting("planning and writing"), bench_over(asked.content, options.store) as bench:
        made = planned(asked.content, bench)
        said = Said(options.terms or "us", options.units, options.paper, options.sheet, language, options.words)
        document = written(asked, made, bench.known, options.form, said) if made.plan else None
    if document is None:
        return _refuse(asked, made, options.form)
    output.deliver(document, options.out)
    return endings.FOUND if made.has_errors else endings.DONE


def written(asked: Asked, made: Planned, known: Known, form: str, said: Said = AS_USUAL) -> str | bytes:
    """Return the pattern of a plan in a form: as text, or as the bytes of a file."""
    from counterpane.library.patterns.pages import with_pictures
    from counterpane.press.markdown import as_markdown
    from counterpane.press.text import as_text

    assert made.plan is not None
    if said.sheet == "designer":
        return _sheet(asked, made, known, form, said)
    pattern, drawn = with_pictures(made.plan, _pattern(asked, made, known, said), known.vocabulary, form)
    if said.language:
        return _in_language(pattern, drawn, form, said)
    if form in ("html", "pdf"):
        return _page(pattern, drawn, form, said.paper)
    if form == "markdown":
        return as_markdown(pattern, drawn)
    if form == "text":
        return as_text(pattern, drawn)
    from counterpane.press.data import as_data

    return output.as_json({"pattern": as_data(pattern, drawn), "text": as_text(pattern, drawn)})


def _language(options: argparse.Namespace) -> str:
    """Return the language asked for, "" for English; raise Unreadable for one that does not go with the rest."""
    from counterpane.seeding.roots import language_codes

    code: str = options.language
    if code == "en":
        return ""
    if code not in language_codes():
        known = ", ".join(("en", *language_codes()))
        raise endings.Unreadable(f"patterns are not written in {code!r}", f"Languages are {known}.")
    if options.terms == "uk":
        raise endings.Unreadable("UK terms are of English", "Leave out --terms or --language.")
    if options.words == "full":
        raise endings.Unreadable("full words are of English", "Leave out --words or --language.")
    if options.sheet == "designer":
        raise endings.Unreadable("the designer's sheet is in English", "Leave out --sheet or --language.")
    return code


def _in_language(pattern: Pattern, drawn: Sequence[Picture], form: str, said: Said) -> str | bytes:
    from counterpane import wiring

    if form == "json":
        return output.as_json(wiring.data_in(said.language, pattern, drawn))
    made = wiring.press_in(said.language, form, pattern, drawn, said.paper)
    return made if form in ("html", "pdf") else made.decode()


def _sheet(asked: Asked, made: Planned, known: Known, form: str, said: Said) -> str | bytes:
    from counterpane.library.patterns.designing import sheet_of, whole_json
    from counterpane.press.data import sheet_data
    from counterpane.press.designer import as_sheet

    assert made.plan is not None
    sheet = sheet_of(made.plan, _asked(asked, said), known)
    if form == "json":
        return output.as_json(whole_json(sheet_data(sheet), made.answer, as_sheet(sheet, "text").decode()))
    document = as_sheet(sheet, form, said.paper)
    return document if form in ("html", "pdf") else document.decode()


def _page(pattern: Pattern, drawn: Sequence[Picture], form: str, paper: Paper) -> bytes:
    from counterpane.press.html import as_html
    from counterpane.press.pdf import as_pdf

    return as_html(pattern, drawn, paper) if form == "html" else as_pdf(pattern, drawn, paper)


def _pattern(asked: Asked, made: Planned, known: Known, said: Said) -> Pattern:
    from counterpane.library.plans.planning import pattern_of

    assert made.plan is not None
    return pattern_of(made.plan, _asked(asked, said), known)


def _asked(asked: Asked, said: Said) -> dict[str, Any]:
    return {**asked.content, "terms": said.terms, "units": said.units, "words": said.words, "title": asked.title}


def _refuse(asked: Asked, made: Planned, form: str) -> int:
    from counterpane.cli.planning import show_refusal

    if form == "json":
        output.put_json(made.answer)
        return endings.FOUND
    return show_refusal(asked, made)
