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

from counterpane.cli import INTERRUPTED, output

MOST_SAID = 300  # Characters of an unforeseen error that are repeated; house.
DONE, FOUND, USAGE, MISSING, REFUSED, NETWORK = range(6)


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
    """Return the exit status of `run`; errors become a line or two on standard error, never a traceback."""
    try:
        status = run()
    except SystemExit as exit_:  # argparse has said what it has to say.
        status = exit_.code if isinstance(exit_.code, int) else DONE
    except KeyboardInterrupt:
        status = _say(
            "interrupted; no file was left half written", "Type the same command again to finish.", INTERRUPTED
        )
    except Exception as fault:  # The last resort: whoever typed the command is owed a line, not a stack.
        ended = fault if isinstance(fault, Ended) else _translated(fault)
        status = _say(str(ended), ended.hint, ended.status)
    output.put("")
    return status


def _translated(fault: Exception) -> Ended:
    from counterpane.library import errors, values
    from counterpane.seeding import SeedFault
    from counterpane.serving import CannotServe
    from counterpane.settings import SettingsError

    kinds: tuple[tuple[type[Exception], type[Ended]], ...] = (
        (errors.NotFound, Missing),
        (values.BadInput, Unreadable),
        (errors.Unreadable, Unreadable),
        (errors.Unkeepable, Unreadable),
        (errors.BrokenDump, Unreadable),
        (CannotServe, Unreachable),
        (errors.PeerUnreachable, Unreachable),
        (errors.LibraryError, NotPermitted),
        (PermissionError, NotPermitted),
        (OSError, Unreadable),
        (SeedFault, Unreadable),
        (SettingsError, Unreadable),
    )
    message, hint = _sentence(fault), getattr(fault, "hint", None) or ""
    for kind, ended in kinds:
        if isinstance(fault, kind):
            return ended(message, hint)
    said = f"a fault in Counterpane itself: {type(fault).__name__}: {message[:MOST_SAID]}"
    return Unreadable(said, "Please report it, with what you typed.")


def _sentence(fault: Exception) -> str:
    if isinstance(fault, OSError) and fault.strerror:
        return f"{f'{fault.filename}: ' if fault.filename else ''}{fault.strerror.lower()}"
    pointer = getattr(fault, "pointer", None)
    return f"{f'{pointer}: ' if pointer else ''}{' '.join(str(fault).split())}"


def _say(message: str, hint: str, status: int) -> int:
    output.tell(f"counterpane: {message}")
    if hint:
        output.tell(f"  {hint}")
    return status
