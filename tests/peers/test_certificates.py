"""A peer over TLS for real: whose certificate is believed, and that the connection stays at the address resolved."""

from __future__ import annotations

import socket
import ssl
import subprocess
import threading
from collections.abc import Iterator
from contextlib import closing
from dataclasses import dataclass, field
from http.server import BaseHTTPRequestHandler, HTTPServer
from pathlib import Path

import pytest

from counterpane.library.errors import PeerRefused, PeerUnreachable
from counterpane.peers import open_peer

NAME, OTHER = "loft.example", "attic.example"


@dataclass(slots=True)
class Tls:
    """A server on this machine: its port, its certificate, and the names it was called by in TLS and in HTTP."""

    port: int
    certificate: Path
    named: list[str | None] = field(default_factory=list)
    hosts: list[str] = field(default_factory=list)

    def base(self, name: str = NAME) -> str:
        """Return the address under a name."""
        return f"https://{name}:{self.port}"


def certificate(place: Path, name: str) -> Path:
    """Make a key and a certificate of this name that signs itself, in one file."""
    key, made, both = (place / f"{name}.{end}" for end in ("key", "crt", "pem"))
    place.mkdir(exist_ok=True)
    subject = ("-subj", f"/CN={name}", "-addext", f"subjectAltName=DNS:{name}", "-days", "2", "-nodes")
    new = ("openssl", "req", "-x509", "-newkey", "ec", "-pkeyopt", "ec_paramgen_curve:prime256v1")
    subprocess.run([*new, *subject, "-keyout", key, "-out", made], check=True, capture_output=True)
    both.write_bytes(key.read_bytes() + made.read_bytes())
    return both


@pytest.fixture
def tls(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Iterator[Tls]:
    """Yield a library without a history, to whose address both names lead."""
    pem = certificate(tmp_path / "own", NAME)
    made = Tls(0, tmp_path / "own" / f"{NAME}.crt")

    def answer(handler: BaseHTTPRequestHandler) -> None:
        made.hosts.append(handler.headers["Host"])
        handler.send_response(200)
        handler.send_header("Content-Length", "0")
        handler.end_headers()

    def called(_: object, name: str | None, __: object) -> None:
        made.named.append(name)

    handler = type("Handler", (BaseHTTPRequestHandler,), {"do_GET": answer, "log_message": lambda *_: None})
    server = HTTPServer(("127.0.0.1", 0), handler)
    server.handle_error = lambda *_: None  # type: ignore[method-assign]
    context = ssl.SSLContext(ssl.PROTOCOL_TLS_SERVER)
    context.load_cert_chain(pem)
    context.sni_callback = called
    server.socket = context.wrap_socket(server.socket, server_side=True)
    made.port = server.server_port
    real = socket.getaddrinfo
    here = [(socket.AF_INET, socket.SOCK_STREAM, 6, "", ("127.0.0.1", made.port))]
    leads = lambda host, *rest, **more: here if host in (NAME, OTHER) else real(host, *rest, **more)  # noqa: E731
    monkeypatch.setattr(socket, "getaddrinfo", leads)
    thread = threading.Thread(target=server.serve_forever, kwargs={"poll_interval": 0.01})
    thread.start()
    yield made
    server.shutdown()
    thread.join()
    server.server_close()


def pulled(tls: Tls, certificates: Path | None, name: str = NAME) -> list[object]:
    """Read the history of the peer under a name."""
    believed = str(certificates) if certificates else ""
    with closing(open_peer(tls.base(name), tls.base(name), certificates=believed)) as peer:
        return list(peer.changes(0))


def test_a_peer_with_the_certificate_that_is_named_is_read(tls: Tls) -> None:
    """TLS and HTTP call it by its name, while the connection goes to the address."""
    assert pulled(tls, tls.certificate) == []
    assert (tls.named, tls.hosts) == ([NAME], [f"{NAME}:{tls.port}"])


def test_a_certificate_that_no_authority_gave_is_refused_where_none_is_named(tls: Tls) -> None:
    """No request is sent."""
    with pytest.raises(PeerUnreachable, match=r"(?i)certificate verify failed"):
        pulled(tls, None)
    assert tls.hosts == []


def test_another_certificate_of_the_same_name_is_refused(tls: Tls, tmp_path: Path) -> None:
    """What is believed is the certificate, and not what it says of itself."""
    certificate(tmp_path / "false", NAME)
    with pytest.raises(PeerUnreachable, match=r"(?i)certificate verify failed"):
        pulled(tls, tmp_path / "false" / f"{NAME}.crt")
    assert tls.hosts == []


def test_a_believed_certificate_of_another_name_is_refused(tls: Tls) -> None:
    """It is held against the name in the address, not against the machine."""
    with pytest.raises(PeerUnreachable, match=r"(?i)hostname|attic\.example"):
        pulled(tls, tls.certificate, OTHER)
    assert tls.hosts == []


def test_a_file_of_certificates_that_is_not_there_is_told(tls: Tls, tmp_path: Path) -> None:
    """Before anything is sent."""
    with pytest.raises(PeerRefused, match="no file"):
        pulled(tls, tmp_path / "none.pem")
    assert tls.named == []
