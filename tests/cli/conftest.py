"""The command line, typed in process: what it prints on both streams, and its exit status."""

from __future__ import annotations

import io
import sys
from collections.abc import Callable
from dataclasses import dataclass
from pathlib import Path

import pytest

from counterpane.cli import main


@dataclass(frozen=True, slots=True)
class Typed:
    """What a command did."""

    status: int
    out: str
    err: str


Type = Callable[..., Typed]


@pytest.fixture
def typed(tmp_path: Path, monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]) -> Type:
    """Return a function that types a command in an empty folder, with bytes on standard input."""
    monkeypatch.chdir(tmp_path)
    monkeypatch.setenv("NO_COLOR", "1")

    def run(*argv: str, stdin: bytes | str = b"") -> Typed:
        raw = stdin.encode() if isinstance(stdin, str) else stdin
        monkeypatch.setattr(sys, "stdin", io.TextIOWrapper(io.BytesIO(raw), encoding="utf-8"))
        capsys.readouterr()
        status = main(list(argv))
        shown = capsys.readouterr()
        return Typed(status, shown.out, shown.err)

    return run
