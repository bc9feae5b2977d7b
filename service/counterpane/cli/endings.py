"""How a command ends: the exit statuses, and the one table from errors to them.

0    done; no finding of severity error
1    findings of severity error, or a plan that cannot be made
2    usage, unreadable or ill-typed input; also a fault of the program itself, said in one line
3    an unknown slug or a missing file
4    refused by licence, permission or state
5    the network
130  interrupted

Ended
├── Unreadable      2
├── Missing         3
├── NotPermitted    4
└── Unreachable     5
"""

from __future__ import annotations

from collections.abc import Callable
from typing import ClassVar

from counterpane.cli import output

DONE, FOUND, USAGE, MISSING, REFUSED, NETWORK, INTERRUPTED = 0, 1, 2, 3, 4, 5, 130


class Ended(Exception):
    """A command cannot go on: what is wrong, and the next step."""

    status: ClassVar[int] = USAGE

    def __init__(self, message: str, hint: str = "") -> None:
        super().__init__(message)
        self.hint = hint


class Unreadable(Ended):
    """The input cannot be read, or holds something of the wrong type."""


class Missing(Ended):
    """A file does not exist, or a slug is not known."""

    status = MISSING


class NotPermitted(Ended):
    """The machine or the library refuses it."""

    status = REFUSED


class Unreachable(Ended):
    """An address or a port cannot be had."""

    status = NETWORK


def guarded(run: Callable[[], int]) -> int:
    """Return the exit status of `run`; errors become one line on standard error, never a traceback."""
    try:
        return run()
    except Ended as ended:
        return _say(str(ended), ended.hint, ended.status)
    except KeyboardInterrupt:
        return _say("interrupted; no file was left half written", "Run the same command again.", INTERRUPTED)
    except OSError as fault:
        return _say(_of_system(fault), "", USAGE)
    except Exception as fault:  # The last resort: whoever typed the command is owed a line, not a stack.
        what = " ".join(f"{type(fault).__name__}: {fault}".split())
        return _say(f"a fault in Counterpane itself: {what[:300]}", "Please report it with what you typed.", USAGE)


def _of_system(fault: OSError) -> str:
    where = f"{fault.filename}: " if fault.filename else ""
    return f"{where}{(fault.strerror or str(fault)).lower()}"


def _say(message: str, hint: str, status: int) -> int:
    output.tell(f"counterpane: {message}")
    if hint:
        output.tell(f"  {hint}")
    return status
