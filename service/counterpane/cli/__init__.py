"""The command line: reads what was typed, calls one use case, writes the answer.

Data go to standard output, all else to standard error. Each command is one file in `commands`; what a person reads is
drawn in `showing`. Nothing heavy is imported before a command runs, so that `--help` stays quick.
"""

from __future__ import annotations

from collections.abc import Sequence

__all__ = ["main"]

INTERRUPTED = 130


def main(argv: Sequence[str] | None = None) -> int:
    """Run one command and return its exit status; `argv` is what follows the program's name."""
    try:
        from counterpane.cli import endings, output, parser
        from counterpane.collecting import collect_seldom
    except KeyboardInterrupt:
        return INTERRUPTED
    output.prepare()
    collect_seldom()
    return endings.guarded(lambda: parser.run(argv))
