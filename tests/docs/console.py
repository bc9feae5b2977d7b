"""Console blocks of a document: the commands typed, what they print, and the files the text says to save."""

from __future__ import annotations

import re
from dataclasses import dataclass
from pathlib import Path

TOP = Path(__file__).parents[2]
_BLOCK = re.compile(r"^```console\n(.*?)^```$", re.DOTALL | re.MULTILINE)
_FILE = re.compile(r"as `([\w.-]+)`:\n\n```\w*\n(.*?)^```$", re.DOTALL | re.MULTILINE)
ANY_LINES = "…"


@dataclass(frozen=True, slots=True)
class Step:
    """One command and the lines shown under it; no lines where the document shows none."""

    command: str
    shown: tuple[str, ...]


def blocks(text: str) -> list[tuple[Step, ...]]:
    """Return the steps of each console block."""
    return [_steps(body) for body in _BLOCK.findall(text)]


def files(text: str) -> dict[str, str]:
    """Return the files that the text says to save, by name: a sentence ending "as `name`:" and a block."""
    return dict(_FILE.findall(text))


def prints(shown: tuple[str, ...], printed: str) -> bool:
    """Return whether the output is the lines shown; a line of one ellipsis stands for any number of lines."""
    parts = [".*" if line == ANY_LINES else re.escape(line) + "\n" for line in shown]
    return (
        re.fullmatch("".join(parts), "".join(f"{line.rstrip()}\n" for line in printed.splitlines()), re.DOTALL)
        is not None
    )


def _steps(body: str) -> tuple[Step, ...]:
    typed = re.split(r"^\$ ", body, flags=re.MULTILINE)[1:]
    return tuple(_step(part.splitlines()) for part in typed)


def _step(lines: list[str]) -> Step:
    last = next(index for index, line in enumerate(lines) if not line.endswith("\\"))
    return Step("\n".join(lines[: last + 1]), tuple(line.rstrip() for line in lines[last + 1 :]))
