"""The two streams: data to standard output, all else to standard error; colour only where a terminal shows it."""

from __future__ import annotations

import contextlib
import errno
import json
import os
import shutil
import sys
import tempfile
import threading
from collections.abc import Iterator, Mapping
from decimal import Decimal
from fractions import Fraction
from pathlib import Path
from typing import IO, TYPE_CHECKING, AnyStr

if TYPE_CHECKING:
    from rich.console import Console

PLAIN_WIDTH = 100  # Columns of a table where no terminal says its own width; house.
PATIENCE = 0.5  # Seconds after which long work says that it goes on.


def prepare() -> None:
    """Write UTF-8 whatever the locale says, and never fail on a lone surrogate that came in with the input."""
    for stream in (sys.stdout, sys.stderr):
        reconfigure = getattr(stream, "reconfigure", None)
        if reconfigure is not None:
            reconfigure(encoding="utf-8", errors="backslashreplace")


def put(text: str) -> None:
    """Write data to standard output; a reader that has gone away ends the writing quietly."""
    _write(sys.stdout, text)


def tell(line: str) -> None:
    """Write one line to standard error."""
    _write(sys.stderr, f"{line}\n")


def put_json(value: object) -> None:
    """Write one JSON document to standard output."""
    put(as_json(value))


def as_json(value: object) -> str:
    """Return a value as JSON of two blanks' indentation; exact numbers become numbers of their decimal text."""
    return json.dumps(value, ensure_ascii=False, indent=2, default=_number) + "\n"


def coloured(stream: IO[str]) -> bool:
    """Return whether a person watches this stream and has not asked for plain text (NO_COLOR)."""
    return stream.isatty() and not os.environ.get("NO_COLOR")


def width() -> int:
    """Return the columns of the terminal, or those of a table where no terminal is."""
    return shutil.get_terminal_size().columns if sys.stdout.isatty() else PLAIN_WIDTH


@contextlib.contextmanager
def page() -> Iterator[Console]:
    """Give a console to draw tables on and put what was drawn to standard output at the end."""
    from rich.console import Console

    lively = coloured(sys.stdout)
    width = None if sys.stdout.isatty() else PLAIN_WIDTH
    console = Console(
        file=sys.stdout,
        width=width,
        force_terminal=lively,
        no_color=not lively,
        highlight=False,
        markup=False,  # Rows are full of square brackets.
        emoji=False,
    )
    with console.capture() as drawn:
        yield console
    put("\n".join(line.rstrip() for line in drawn.get().split("\n")))


def called() -> str:
    """Return how this program is called from where the reader is: by its name where the shell finds it."""
    path = Path(sys.argv[0])
    if shutil.which("counterpane") or path.stem != "counterpane":
        return "counterpane"
    return os.path.relpath(path)


@contextlib.contextmanager
def waiting(what: str) -> Iterator[None]:
    """Say on a terminal what takes so long, once it has taken half a second."""
    timer = threading.Timer(PATIENCE, tell, (f"{what} …",))
    timer.daemon = True
    if sys.stderr.isatty():
        timer.start()
    try:
        yield
    finally:
        timer.cancel()


def save(path: Path, document: str | bytes, mode: int = 0o644) -> None:
    """Write a file whole or not at all: beside its place first, then moved there."""
    content = document.encode("utf-8", "backslashreplace") if isinstance(document, str) else document
    with saving(path, mode) as file:
        file.write(content)


@contextlib.contextmanager
def saving(path: Path, mode: int = 0o644) -> Iterator[IO[bytes]]:
    """Give a file to write into beside its place, and move it there at the end of the block, if that ends well."""
    if path.is_dir():
        raise IsADirectoryError(errno.EISDIR, "is a folder, not a file", str(path))
    path.parent.mkdir(parents=True, exist_ok=True)
    handle, name = tempfile.mkstemp(dir=path.parent, prefix=f".{path.name}.")
    try:
        os.close(handle)
        with Path(name).open("wb") as file:
            yield file
        Path(name).chmod(mode)
        Path(name).replace(path)
    except BaseException:
        Path(name).unlink(missing_ok=True)
        raise


def deliver(document: str | bytes, out: Path | None) -> None:
    """Write a document into the file that was named, and tell so, or to standard output where none was."""
    if out is not None:
        save(out, document)
        tell(f"wrote {out}")
    elif isinstance(document, str):
        put(document)
    else:
        sys.stdout.flush()
        _write(sys.stdout.buffer, document)


def _write(stream: IO[AnyStr], document: AnyStr) -> None:
    try:
        stream.write(document)
        stream.flush()
    except BrokenPipeError:
        os.dup2(os.open(os.devnull, os.O_WRONLY), stream.fileno())


def _number(value: object) -> object:
    if isinstance(value, Decimal | Fraction):
        return int(value) if value == int(value) else float(value)
    if isinstance(value, Mapping):
        return dict(value)
    raise TypeError(f"{type(value).__name__} has no JSON")
