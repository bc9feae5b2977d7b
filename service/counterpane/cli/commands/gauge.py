"""`counterpane gauge`: what swatches say, and what their reading leaves open."""

from __future__ import annotations

import argparse

from counterpane.cli import endings, output
from counterpane.cli.options import take_input, take_json

NAME = "gauge"
ABOUT = """Read swatches as they were counted: the gauge of each texture, what the wash did, what stays open of a size.

The input is TOML or JSON: "swatches" with stitches, rows and over_cm (or over_in) each, if known "in", "washed" and
what it counted "before"; and if wanted a "size". Swatches of one texture are taken together."""
EXAMPLES = """examples:
  $ printf '[[swatches]]\\nstitches = 22\\nrows = 30\\nover_cm = 10\\n[size]\\nnamed = "pram"\\n' | counterpane gauge -
  $ counterpane gauge swatches.toml
  $ printf '{"swatches": [{"stitches": 9, "rows": 12, "over_in": 1.5}]}' | counterpane gauge - --json"""


def declare(parser: argparse.ArgumentParser) -> None:
    """Add the options."""
    take_input(parser, "swatches, TOML or JSON")
    take_json(parser)


def run(options: argparse.Namespace) -> int:
    """Read the swatches and show what they say."""
    from counterpane.cli.documents import document_of
    from counterpane.cli.inputs import read_text
    from counterpane.cli.planning import refuse_misfits
    from counterpane.library.plans import gauges
    from counterpane.seeding.facts import facts_by_name
    from counterpane_schema.gauge import GaugeRequest

    given = read_text(options.file)
    document = document_of(given)
    refuse_misfits(GaugeRequest(), document, given.name, "a list of swatches")
    answer = gauges.read(document, facts_by_name())
    if options.json:
        output.put_json(answer)
        return endings.DONE
    from counterpane.cli.showing import gauges as showing

    with output.page() as console:
        showing.draw(console, answer)
    return endings.DONE
