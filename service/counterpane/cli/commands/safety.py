"""`counterpane safety`: what is known of a piece and a child, and what nobody has assessed."""

from __future__ import annotations

import argparse

from counterpane.cli import endings, output
from counterpane.cli.options import take_input, take_json

NAME = "safety"
ABOUT = """Tell what is known to be a risk in a piece for a child, and what was not assessed.

The input says what is known, in TOML or JSON; every line may be left out, and what is left out is not assessed:

  age_months = [0, 12]          the youngest and the oldest; or age_band = "preterm"
  use = "pram"                  sleep, pram, car-seat, floor, lap, display or hospital
  markets = ["UK"]              where it is sold or given
  hole_mm = 4.5                 the largest opening of the washed piece, measured with a smooth rod
  mass_g = 350                  with width_cm and length_cm
  fibres = [{ name = "merino", pct = 100 }]
  wash = { method = "machine", temp_c = 60 }
  attachments = [{ kind = "button", largest_mm = 12 }]

General information, not an approval: ask the ward or your health service. The exit status is 1 where
something stops."""
EXAMPLES = """examples:
  $ counterpane safety piece.toml
  $ counterpane safety piece.toml --json"""


OF_A_PLAN = """A plan tells of its own safety: counterpane plan FILE, with what is known of child and use under [for].
  Here write what is known of a finished piece, such as hole_mm = 4.5 and use = "pram"; see the help of this command."""


def declare(parser: argparse.ArgumentParser) -> None:
    """Add the options."""
    take_input(parser, "what is known of a piece, TOML or JSON")
    take_json(parser)


def run(options: argparse.Namespace) -> int:
    """Show the record; the status is 1 where a finding stops."""
    from counterpane.cli.documents import document_of
    from counterpane.cli.inputs import read_text
    from counterpane.cli.planning import refuse_misfits, refuse_plan
    from counterpane.library.safety.safety import assess, with_context
    from counterpane.seeding.known import load_known
    from counterpane_schema.safety import SafetyInputs

    given = read_text(options.file)
    document = document_of(given)
    refuse_plan(document, given.name, "what is known of a piece", OF_A_PLAN)
    refuse_misfits(SafetyInputs(), document, given.name, "what is known of a piece")
    answer = assess(document, load_known().find_profile)
    if options.json:
        output.put_json(answer)
    else:
        from counterpane.cli.showing.safety import draw_safety

        with output.page() as console:
            draw_safety(console, with_context(answer, document), among="In the input")
    stopped = any(finding["severity"] == "stop" for finding in answer["findings"])
    return endings.FOUND if stopped else endings.DONE
