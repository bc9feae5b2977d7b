"""`counterpane label`: what a finished piece is made of, and what stands on its label."""

from __future__ import annotations

import argparse

from counterpane.cli import endings, output
from counterpane.cli.options import take_input, take_json

NAME = "label"
ABOUT = """Work out the label of a finished piece from its yarns: fibres by law, and what each market wants beside.

The input is a list of yarns with the fibres of their ball bands and the grams used, in TOML or JSON. What is not
known is listed with whom to ask, and is never a pass. General information, not legal advice."""
EXAMPLES = """examples:
  $ counterpane label yarns.toml
  $ counterpane label yarns.toml --json"""

OF_A_PLAN = """A plan tells the label of its yarn: counterpane plan FILE, with a [yarn] that has its fibres.
  For the label alone write each yarn as [[yarns]], with grams and fibre = [{ fibre = "wool", percent = 100 }]."""


def declare(parser: argparse.ArgumentParser) -> None:
    """Add the options."""
    take_input(parser, "the yarns of a piece, TOML or JSON")
    take_json(parser)


def run(options: argparse.Namespace) -> int:
    """Show the label; the status is 1 where a finding is an error."""
    from counterpane.cli.documents import document_of
    from counterpane.cli.inputs import read_text
    from counterpane.cli.planning import refuse_misfits, refuse_plan
    from counterpane.library.yarn.labels import label
    from counterpane.seeding.facts import facts_by_name
    from counterpane_schema.label import LabelRequest

    given = read_text(options.file)
    document = document_of(given)
    refuse_plan(document, given.name, "a list of yarns", OF_A_PLAN)
    refuse_misfits(LabelRequest(), document, given.name, "a list of yarns")
    answer = label(document, facts_by_name())
    if options.json:
        output.put_json(answer)
    else:
        from counterpane.cli.showing import labels

        with output.page() as console:
            labels.draw(console, answer)
    wrong = any(finding["severity"] == "error" for finding in answer["findings"])
    return endings.FOUND if wrong else endings.DONE
