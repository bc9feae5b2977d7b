"""`counterpane size`: a pattern of several sizes in one of them."""

from __future__ import annotations

import argparse

from counterpane.cli import endings, output
from counterpane.cli.inputs import read_text
from counterpane.cli.options import take_input, take_json

NAME = "size"
ABOUT = """Write a pattern of several sizes in one of them: that size's numbers alone, everything else as it stands.

A number of none ("k0", or a dash) goes with its stitches and its comma, and so does what is for other sizes only."""
EXAMPLES = """examples:
  $ counterpane size rows.txt --only 1
  $ printf 'Cast on 95 (113, 131) sts.\\nRow 1: K95 (113, 131).\\n' | counterpane size - --only 113"""


def declare(parser: argparse.ArgumentParser) -> None:
    """Add the options."""
    take_input(parser, "a pattern of several sizes")
    parser.add_argument(
        "--only", required=True, metavar="SIZE", help="the number of the size from 1, its cast-on, or its name"
    )
    take_json(parser)


def run(options: argparse.Namespace) -> int:
    """Write the text of one size."""
    from counterpane.library.texts.extracts import NoSuchSize, extract_text

    given = read_text(options.file)
    try:
        answer = extract_text(given.text, options.only)
    except NoSuchSize as fault:
        raise endings.Unreadable(str(fault), fault.hint) from None
    if options.json:
        output.put_json(answer)
        return endings.DONE
    output.put(("\ufeff" if given.marked else "") + answer["text"])
    for left in answer["left"]:
        output.tell(f"{given.name}:{left['line']}:{left['column']}: not one number a size: left as it stands")
    return endings.DONE
