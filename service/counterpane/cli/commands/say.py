"""`counterpane say`: rows said back in other words, with the counts they are worked over."""

from __future__ import annotations

import argparse
from collections.abc import Mapping
from typing import Any

from counterpane.cli import endings, output
from counterpane.cli.inputs import read_text
from counterpane.cli.options import stitches, take_input, take_json, take_terms

NAME = "say"
ABOUT = """Say rows back in US or UK terms, abbreviated or in full words, as they stand or as a table.

Labels, counts, repeat lines and statements keep their places. With --count every repeat is also written
out for that many stitches. A row that cannot be read stays as printed; it is named on standard error,
and the exit status is then 1."""
EXAMPLES = """examples:
  $ counterpane say rows.txt --terms uk
  $ counterpane say rows.txt --words full --count 26
  $ counterpane say rows.txt --as table
  $ printf 'Row 1: *k2, p2; rep from * to end.\\n' | counterpane say - --count 12 --stitch-by-stitch"""
FORMS = ("lines", "table", "markdown")


def declare(parser: argparse.ArgumentParser) -> None:
    """Add the options."""
    take_input(parser, "a text of rows")
    take_terms(parser, "else those of the text")
    parser.add_argument("--words", choices=("short", "full"), default="short", help="abbreviated, or in full words")
    parser.add_argument("--as", dest="form", choices=FORMS, default="lines", help="the text itself, or a table of rows")
    parser.add_argument("--count", type=stitches, metavar="N", help="begin with N stitches and write the repeats out")
    parser.add_argument("--stitch-by-stitch", action="store_true", help="write short rows out without groups")
    take_json(parser)


def run(options: argparse.Namespace) -> int:
    """Say the text back and tell what could not be read."""
    from counterpane.library.texts.wordings import Wanted, say_text
    from counterpane.seeding import load_vocabulary

    given = read_text(options.file)
    wanted = Wanted(options.terms, options.words, options.form, options.count, options.stitch_by_stitch)
    with output.waiting(f"saying {given.name}"):
        answer = say_text(given.text, load_vocabulary(), wanted, None if options.json else output.width())
    if options.json:
        output.put_json(answer)
    else:
        output.put(("\ufeff" if given.marked and options.form == "lines" else "") + answer["text"])
        _tell(given.name, answer)
    return endings.FOUND if any(f["severity"] == "error" for f in answer["findings"]) else endings.DONE


def _tell(name: str, answer: Mapping[str, Any]) -> None:
    """Tell the findings, and the rows that stay as printed for another reason."""
    for finding in answer["findings"]:
        place = f"{name}:{finding['line']}:{finding['column']}"
        output.tell(f"{place}: {finding['severity']}: {finding['message']} {finding['hint']} ({finding['rule']})")
    found = {finding["line"] for finding in answer["findings"]}
    kept = {row["line"]: row["kept"] for row in answer["rows"] if row["kept"] and row["line"] not in found}
    for line, why in kept.items():
        output.tell(f"{name}:{line}: the row stays as printed: {why}.")
