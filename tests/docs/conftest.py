"""A place to type the commands of the documents: the program, the files to save, the demo's folder, a server."""

from __future__ import annotations

import os
import socket
import subprocess
import sys
import time
import urllib.error
import urllib.request
from collections.abc import Iterator
from pathlib import Path

import pytest

from docs.console import TOP, files

WAIT = 30  # Seconds a server may take to answer on a busy machine.


def _script(path: Path, text: str) -> None:
    path.write_text(f"#!/bin/sh\n{text}\n")
    path.chmod(0o755)


@pytest.fixture(scope="session")
def environment(tmp_path_factory: pytest.TempPathFactory) -> dict[str, str]:
    """Return variables under which `counterpane` and `curl` are commands, the second our own small one."""
    programs = tmp_path_factory.mktemp("bin")
    _script(programs / "counterpane", f'exec "{sys.executable}" -m counterpane "$@"')
    _script(programs / "curl", f'exec "{sys.executable}" "{Path(__file__).with_name("curl.py")}" "$@"')
    kept = {name: value for name, value in os.environ.items() if not name.startswith("COUNTERPANE_")}
    paths = {"PATH": f"{programs}:{os.environ['PATH']}", "PYTHONPATH": f"{TOP}/service:{TOP}/schema"}
    return {**kept, **paths, "NO_COLOR": "1"}


@pytest.fixture(scope="session")
def desk(tmp_path_factory: pytest.TempPathFactory, environment: dict[str, str]) -> Path:
    """Return a folder that holds the files which README.md says to save, and what the demo makes."""
    place = tmp_path_factory.mktemp("desk")
    for name, text in files((TOP / "README.md").read_text("utf-8")).items():
        (place / name).write_text(text, "utf-8")
    command = [sys.executable, "-m", "counterpane", "demo", "--no-serve"]
    subprocess.run(command, cwd=place, env=environment, check=True, capture_output=True, timeout=120)
    return place


@pytest.fixture(scope="session")
def served(desk: Path, environment: dict[str, str]) -> Iterator[dict[str, str]]:
    """Serve the demo's store and return the variables that lead our `curl` to it."""
    with socket.socket() as probe:
        probe.bind(("127.0.0.1", 0))
        port = str(probe.getsockname()[1])
    command = [sys.executable, "-m", "counterpane", "serve", "--store", "season/library.db", "--port", port]
    with subprocess.Popen(
        command, cwd=desk, env=environment, stdout=subprocess.DEVNULL, stderr=subprocess.PIPE
    ) as server:
        try:
            _wait_for(f"http://127.0.0.1:{port}/healthz")
            yield {**environment, "DOCS_PORT": port}
        finally:
            server.terminate()
            server.communicate(timeout=WAIT)


def _wait_for(address: str) -> None:
    until = time.monotonic() + WAIT
    while True:
        try:
            with urllib.request.urlopen(address, timeout=WAIT):
                return
        except urllib.error.URLError:
            if time.monotonic() > until:
                raise
            time.sleep(0.05)
