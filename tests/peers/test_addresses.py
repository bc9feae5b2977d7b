"""Whom a pull may ask, and that it asks nobody else and reads no more than it should."""

from __future__ import annotations

import socket
import threading
from collections.abc import Callable, Iterator
from contextlib import contextmanager
from http.server import BaseHTTPRequestHandler, HTTPServer

import pytest

from counterpane.library.errors import NotTaken, PeerRefused, PeerUnreachable
from counterpane.library.ports import Change
from counterpane.peers import addresses, open_peer
from counterpane.peers.pinned import Meter

LISTED = "https://loft.example, http://127.0.0.1:8321, https://[2001:db8::1]:8443/books/"
CHANGE = Change(1, "2026-01-01T00:00:00Z", "component", "waffle", "a" * 64, "added")
Answer = Callable[[BaseHTTPRequestHandler], None]


@pytest.mark.parametrize(
    ("url", "name"),
    [
        ("https://loft.example/", "loft.example"),
        ("HTTPS://LOFT.example:443", "loft.example"),
        ("http://127.0.0.1:8321", "127.0.0.1:8321"),
        ("https://[2001:db8::1]:8443/books", "[2001:db8::1]:8443/books"),
    ],
)
def test_an_address_in_the_list_may_be_asked(url: str, name: str) -> None:
    """However its host and usual port are written."""
    assert addresses.allowed(url, LISTED).name == name


@pytest.mark.parametrize(
    "url",
    [
        "http://loft.example",
        "https://loft.example:8443",
        "https://loft.example/other",
        "https://loft.example.evil.example",
        "https://user@loft.example",
        "https://loft.example?x=1",
        "https://loft.example#x",
        "ftp://loft.example",
        "https://",
        "https://loft.example:99999",
        "loft.example",
        "",
        "https://[::1",
    ],
)
def test_any_other_address_is_refused(url: str) -> None:
    """Another scheme, port, path or host, and what is no address at all."""
    with pytest.raises(PeerRefused):
        addresses.allowed(url, LISTED)


@pytest.mark.parametrize(
    ("url", "ip", "allowed"),
    [
        ("http://localhost:1", "127.0.0.1", True),
        ("http://localhost:1", "192.0.2.7", False),
        ("https://loft.example", "192.0.2.7", True),
        ("https://loft.example", "169.254.169.254", False),
        ("https://loft.example", "0.0.0.0", False),
        ("https://loft.example", "224.0.0.1", False),
    ],
)
def test_http_stays_on_this_machine(monkeypatch: pytest.MonkeyPatch, url: str, ip: str, allowed: bool) -> None:
    """Wherever the name leads, and a name never leads to a place where no library is."""
    found = [(socket.AF_INET, socket.SOCK_STREAM, 6, "", (ip, 1))]
    monkeypatch.setattr(socket, "getaddrinfo", lambda *_, **__: found)
    if allowed:
        assert addresses.resolved(addresses.address_of(url)) == ip
    else:
        with pytest.raises(PeerRefused):
            addresses.resolved(addresses.address_of(url))


@contextmanager
def answering(answer: Answer) -> Iterator[str]:
    """Serve one answer to every request for a block."""
    handler = type("Handler", (BaseHTTPRequestHandler,), {"do_GET": answer, "log_message": lambda *_: None})
    server = HTTPServer(("127.0.0.1", 0), handler)
    thread = threading.Thread(target=server.serve_forever, kwargs={"poll_interval": 0.01})
    thread.start()
    try:
        yield f"http://localhost:{server.server_port}"
    finally:
        server.shutdown()
        thread.join()
        server.server_close()


def sends(body: bytes, **headers: str) -> Answer:
    """Return an answer of these bytes."""

    def answer(handler: BaseHTTPRequestHandler) -> None:
        handler.send_response(int(headers.get("status", 200)))
        for name, value in headers.items():
            handler.send_header(name.replace("_", "-"), value)
        handler.send_header("Content-Length", str(len(body)))
        handler.end_headers()
        handler.wfile.write(body)

    return answer


def test_the_name_is_resolved_once(monkeypatch: pytest.MonkeyPatch) -> None:
    """A name that leads elsewhere a moment later is not followed; the header Host is that of the name."""
    hosts: list[str] = []

    def answer(handler: BaseHTTPRequestHandler) -> None:
        hosts.append(handler.headers["Host"])
        sends(b"")(handler)

    with answering(answer) as url:
        real, asked = socket.getaddrinfo, []

        def once(host: str, *args: object, **kwargs: object) -> object:
            asked.append(host)
            return real(host, *args, **kwargs)  # type: ignore[arg-type]

        monkeypatch.setattr(socket, "getaddrinfo", once)
        monkeypatch.setenv("HTTP_PROXY", "http://127.0.0.1:9")
        peer = open_peer(url, url)
        assert list(peer.changes(0)) == []
        peer.close()
    assert asked.count("localhost") == 1
    assert hosts == [url.removeprefix("http://")]


@pytest.mark.parametrize(
    ("answer", "error"),
    [
        (sends(b"", status="302", Location="http://127.0.0.1:9/v1/changes"), PeerRefused),
        (sends(b"\x1f\x8b", Content_Encoding="gzip"), PeerRefused),
        (sends(b"x" * (16 * 2**20 + 1)), PeerRefused),
        (sends(b"no lines\n"), PeerUnreachable),
        (sends(b'{"seq":1}\n'), PeerRefused),
        (sends(b"[]\n"), PeerRefused),
        (sends(b'{"seq":1,"at":"x","kind":"secret","slug":"a","sha256":null,"event":"added"}\n'), PeerRefused),
    ],
)
def test_an_answer_that_no_library_gives_is_refused(answer: Answer, error: type[Exception]) -> None:
    """A way to another place, packed bytes, too many of them, and lines that are none."""
    with answering(answer) as url, pytest.raises(error):
        peer = open_peer(url, url)
        list(peer.changes(0))
    peer.close()


def test_an_object_of_another_hash_is_named() -> None:
    """By the hash under which it was asked for."""
    with answering(sends(b"{}")) as url, pytest.raises(NotTaken, match="a" * 64):
        peer = open_peer(url, url)
        peer.object(CHANGE)
    peer.close()


@pytest.mark.parametrize("meter", [Meter(most_bytes=10), Meter(seconds=-1)])
def test_a_pull_reads_only_so_much_and_so_long(meter: Meter) -> None:
    """It stops clearly, and can be typed again."""
    with answering(sends(b"{}" * 10)) as url, pytest.raises(PeerRefused, match="one may"):
        peer = open_peer(url, url, meter=meter)
        list(peer.changes(0))
    peer.close()
