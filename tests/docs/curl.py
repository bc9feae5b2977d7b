"""As much of `curl` as the documents use, so that their tests need no program from outside Python.

Options: -s, -i, -H HEADER, -X METHOD, -d TEXT or -d @FILE. The port of the address is replaced by DOCS_PORT.
"""

from __future__ import annotations

import argparse
import os
import sys
import urllib.error
import urllib.parse
import urllib.request
from http.client import HTTPResponse
from pathlib import Path


def main() -> int:
    """Make the request and print the answer; an error status is an answer too."""
    parser = argparse.ArgumentParser()
    parser.add_argument("-s", action="store_true")
    parser.add_argument("-i", action="store_true")
    parser.add_argument("-H", action="append", default=[])
    parser.add_argument("-X")
    parser.add_argument("-d")
    parser.add_argument("address")
    given = parser.parse_args()
    status, head, body = _ask(given)
    if given.i:
        sys.stdout.write(f"HTTP/1.1 {status}\n{head}\n")
    sys.stdout.buffer.write(body)
    return 0


def _ask(given: argparse.Namespace) -> tuple[int, str, bytes]:
    address = urllib.parse.urlsplit(given.address)
    there = address._replace(netloc=f"{address.hostname}:{os.environ['DOCS_PORT']}").geturl()
    data = None
    if given.d is not None:
        data = Path(given.d[1:]).read_bytes() if given.d.startswith("@") else given.d.encode()
    headers = dict(line.split(": ", 1) for line in given.H)
    request = urllib.request.Request(there, data, headers, method=given.X)
    try:
        with urllib.request.urlopen(request, timeout=30) as answer:
            return _parts(answer)
    except urllib.error.HTTPError as refusal:
        with refusal:
            return _parts(refusal)


def _parts(answer: HTTPResponse | urllib.error.HTTPError) -> tuple[int, str, bytes]:
    return answer.status or 0, str(answer.headers), answer.read()


if __name__ == "__main__":
    sys.exit(main())
