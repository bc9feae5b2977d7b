"""A server before the application: which one, where it listens, and how its workers open the library."""

from __future__ import annotations

import os
import socket
from collections.abc import Callable, Iterator
from contextlib import contextmanager, nullcontext
from dataclasses import dataclass, replace
from pathlib import Path
from tempfile import TemporaryDirectory
from typing import TYPE_CHECKING, Literal

from counterpane.collecting import collect_seldom
from counterpane.library.errors import LibraryError
from counterpane.wiring import IN_MEMORY, app_of, limit_of, open_library

if TYPE_CHECKING:
    from flask import Flask

LOOPBACK = ("127.0.0.1", "::1", "localhost")
STORE_VARIABLE = "COUNTERPANE_SERVED_STORE"
OPEN_VARIABLE = "COUNTERPANE_SERVED_OPEN"
READERS_VARIABLE = "COUNTERPANE_SERVED_READERS_AT"
QUOTA_VARIABLE = "COUNTERPANE_SERVED_QUOTA"
ACCOUNTS_VARIABLE = "COUNTERPANE_SERVED_ACCOUNTS"
WAITRESS_THREADS = 8
STOP_SECONDS = 3
USUAL_QUOTA = 1200
"""Requests a minute of a caller where others than this machine can ask; house."""


class CannotServe(LibraryError):
    """The server cannot be started as asked."""

    hint = "Install what is missing, or choose another server with --server."


def served_app() -> Flask:
    """Return the application as a server's worker makes it: the path stands in the environment."""
    collect_seldom()
    services = open_library(os.environ[STORE_VARIABLE], open_reading=os.environ[OPEN_VARIABLE] == "yes")
    limit = limit_of(int(os.environ[QUOTA_VARIABLE]), os.environ[ACCOUNTS_VARIABLE])
    return app_of(replace(services, address=os.environ.get(READERS_VARIABLE, "")), logged=True, limit=limit)


@dataclass(frozen=True, slots=True)
class Serving:
    """What to serve, where, and how: by "granian" with workers and threads, or by "waitress" with threads.

    `requests_per_minute` are those of each caller, 0 for no limit and "" for what is usual where it listens.
    """

    store: str
    host: str = "127.0.0.1"
    port: int = 8321
    server: str = "granian"
    workers: int = 2
    threads: int = 2
    readers_at: str = ""
    requests_per_minute: int | Literal[""] = ""

    @property
    def quota(self) -> int:
        """Requests a minute of each caller; 0 is no limit, which is usual where only this machine can ask."""
        usual = 0 if self.open_reading else USUAL_QUOTA
        return usual if self.requests_per_minute == "" else self.requests_per_minute

    @property
    def open_reading(self) -> bool:
        """Reading is open where only this machine can ask."""
        return self.host in LOOPBACK

    @property
    def address(self) -> str:
        """The address that a browser takes."""
        return f"http://{f'[{self.host}]' if ':' in self.host else self.host}:{self.port}"


def serve(serving: Serving, announce: Callable[[str], None]) -> None:
    """Serve a library until the process is interrupted; `announce` is told the address once it listens.

    Port 0 is a free one. Raise CannotServe, and what `open_library` raises.
    """
    serving = replace(serving, port=serving.port or free_port(serving.host))
    _refuse_taken(serving)
    open_library(serving.store).store.close()  # The starters are in before any worker opens it.
    start = _serve_waitress if serving.server == "waitress" else _serve_granian
    with _accounts() if serving.quota else nullcontext("") as accounts:
        start(serving, accounts, lambda: announce(serving.address))


@contextmanager
def _accounts() -> Iterator[str]:
    """Give the path at which requests are counted, in a temporary folder for this run alone."""
    try:
        made = TemporaryDirectory(prefix="counterpane-", ignore_cleanup_errors=True)
    except OSError:  # Nothing can be counted there: requests are served, and the journal says so.
        yield ""
        return
    with made as folder:
        yield str(Path(folder, "accounts"))


def _refuse_taken(serving: Serving) -> None:
    with socket.socket(socket.AF_INET6 if ":" in serving.host else socket.AF_INET) as probe:
        probe.setsockopt(socket.SOL_SOCKET, socket.SO_REUSEADDR, 1)
        try:
            probe.bind((serving.host, serving.port))
        except (OSError, OverflowError) as fault:
            hint = "Choose another port with --port, or end what listens there."
            raise CannotServe(f"{serving.address} cannot be listened on: {fault}.", hint) from None


def free_port(host: str) -> int:
    """Return a port that is free at this moment."""
    with socket.socket(socket.AF_INET6 if ":" in host else socket.AF_INET) as probe:
        probe.bind((host, 0))
        return int(probe.getsockname()[1])


def _serve_granian(serving: Serving, accounts: str, ready: Callable[[], None]) -> None:
    try:
        from granian import Granian
        from granian.constants import Interfaces
    except ImportError:
        raise CannotServe("granian is not installed.", "Use --server waitress.") from None
    in_memory = serving.store == IN_MEMORY
    os.environ[STORE_VARIABLE] = IN_MEMORY if in_memory else str(Path(serving.store).resolve())
    os.environ |= {OPEN_VARIABLE: "yes" if serving.open_reading else "no", READERS_VARIABLE: serving.readers_at}
    os.environ |= {QUOTA_VARIABLE: str(serving.quota), ACCOUNTS_VARIABLE: accounts}
    granian = Granian(
        "counterpane.serving:served_app",
        address=serving.host,
        port=serving.port,
        interface=Interfaces.WSGI,
        workers=1 if in_memory else serving.workers,  # A store in memory belongs to one process.
        blocking_threads=serving.threads,
        factory=True,
        workers_kill_timeout=STOP_SECONDS,  # A worker that is asked to stop while it starts does not hear it.
        log_enabled=False,
    )
    granian.on_startup(ready)  # No thread may run here: the workers are forked, and would inherit its locks.
    granian.serve()


def _serve_waitress(serving: Serving, accounts: str, ready: Callable[[], None]) -> None:
    try:
        from waitress.server import create_server
    except ImportError:
        raise CannotServe("waitress is not installed.", "Use --server granian.") from None
    services = open_library(serving.store, open_reading=serving.open_reading)
    limit = limit_of(serving.quota, accounts)
    app = app_of(replace(services, address=serving.readers_at), logged=True, limit=limit)
    waiting = create_server(app, host=serving.host, port=serving.port, threads=max(serving.threads, WAITRESS_THREADS))
    ready()
    waiting.run()
