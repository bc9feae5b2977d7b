"""`counterpane serve`: the library over HTTP."""

from __future__ import annotations

import argparse
from dataclasses import fields
from typing import Any

from counterpane.cli import INTERRUPTED, output
from counterpane.cli.options import port, take_store

NAME = "serve"
ABOUT = """Serve a library over HTTP until you press Ctrl-C; the page at its address shows every operation.

A library that does not exist is made, with the parts that ship with the program. On the loopback address reading is
open; on any other it needs a token, as writing always does, and each caller may send 1,200 requests a minute: the
holder of a token wherever they are, everybody else by their address. Behind a proxy all who send no token share one
account, since what a proxy says of addresses is not believed.

granian, the usual server, is the quicker one, and waits for whoever sends a request slowly: a few such senders hold up
everybody. Where strangers can reach the library, choose --server waitress, or put a proxy that buffers before it."""
EXAMPLES = """examples:
  $ counterpane serve --store season/library.db
  $ counterpane serve --host 127.0.0.1 --port 8080"""


def declare(parser: argparse.ArgumentParser) -> None:
    """Add the options."""
    take_store(parser)
    take_address(parser)


def take_address(parser: argparse.ArgumentParser) -> None:
    """Add where to listen, and with what."""
    parser.add_argument("--host", metavar="H", help="the address to listen on (else 127.0.0.1)")
    parser.add_argument("--port", type=port, metavar="P", help="the TCP port (else 8321; 0 lets the system choose)")
    parser.add_argument("--server", choices=("granian", "waitress"), help="the server program (else granian)")
    words = "requests a minute of each caller, 0 for no limit (else 1200, and none on the loopback address)"
    parser.add_argument("--requests-per-minute", metavar="N", help=words)


def run(options: argparse.Namespace) -> int:
    """Serve until interrupted."""
    return serve_until_interrupted(options, options.store)


def serve_until_interrupted(options: argparse.Namespace, store: str | None) -> int:
    """Serve and return the status of an interruption, which is the only way it ends."""
    from counterpane.cli.configuring import settings_of
    from counterpane.serving import Serving, serve

    names = ("host", "port", "server", "requests_per_minute")
    known = settings_of(store=store, **{name: getattr(options, name) for name in names})
    values: dict[str, Any] = {name: setting.value for name, setting in known.items()}
    serving = Serving(**{field.name: values[field.name] for field in fields(Serving)})
    serve(serving, lambda address: output.tell(f"serving {serving.store} at {address} (Ctrl-C ends it)"))
    return INTERRUPTED
