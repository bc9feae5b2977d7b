"""A session that connects to one address and nowhere else, and reads no more than it should.

The name is resolved before; the connection goes to that address, while the certificate and the header Host are those
of the name. Proxies of the environment are not asked, and no redirect is followed.
"""

from __future__ import annotations

import time
from collections.abc import Iterator, Mapping
from typing import Any

import requests
from requests.adapters import HTTPAdapter

from counterpane.library.errors import PeerRefused
from counterpane.peers.addresses import Address

MOST_ANSWER = 16 * 2**20
MOST_BYTES = 2**30
MOST_SECONDS = 600
"""House: the bytes of one answer, and the bytes and the seconds of one pull."""

AGAIN = "What came is kept; pull again to go on."


class Meter:
    """What one pull may still read."""

    def __init__(self, most_bytes: int = MOST_BYTES, seconds: float = MOST_SECONDS) -> None:
        self._left = most_bytes
        self._until = time.monotonic() + seconds

    def take(self, size: int) -> None:
        """Count bytes that came; raise PeerRefused where they or the time are over."""
        self._left -= size
        if self._left < 0:
            raise PeerRefused("The pull has read as many bytes as one may.", AGAIN)
        if time.monotonic() > self._until:
            raise PeerRefused("The pull has taken as long as one may.", AGAIN)


class _Metered:
    """The raw body of an answer, read piece by piece within its bounds."""

    def __init__(self, raw: Any, meter: Meter, most: int) -> None:
        self._raw, self._meter, self._most = raw, meter, most

    def stream(self, amount: int, decode_content: bool = False) -> Iterator[bytes]:
        """Give the body in pieces; raise PeerRefused past a bound."""
        read = 0
        for piece in self._raw.stream(min(amount, 2**16), decode_content=decode_content):
            read += len(piece)
            self._meter.take(len(piece))
            if read > self._most:
                raise PeerRefused(f"An answer of the peer is longer than {self._most} bytes.")
            yield piece

    def __getattr__(self, name: str) -> Any:
        return getattr(self._raw, name)


class PinnedAdapter(HTTPAdapter):
    """Sends requests for one host to one IP address."""

    def __init__(self, address: Address, ip: str, meter: Meter, most: int = MOST_ANSWER) -> None:
        self._address, self._ip, self._meter, self._most = address, ip, meter, most
        super().__init__()

    def build_connection_pool_key_attributes(
        self, request: requests.PreparedRequest, verify: Any, cert: Any = None
    ) -> tuple[Any, Any]:
        """Connect to the address that was resolved; the certificate is that of the name."""
        host, pool = super().build_connection_pool_key_attributes(request, verify, cert)
        wanted = {"scheme": self._address.scheme, "host": self._address.host, "port": self._address.port}
        if {**host, "port": host["port"] or self._address.port} != wanted:
            raise PeerRefused(f"A request leads away from {self._address.base}.")
        if self._address.scheme == "https":
            named = {"server_hostname": self._address.host, "assert_hostname": self._address.host}
            return {**host, "host": self._ip}, {**pool, **named}
        return {**host, "host": self._ip}, pool

    def add_headers(self, request: requests.PreparedRequest, **_: Any) -> None:
        """Name the host, which the connection does not know."""
        request.headers["Host"] = self._address.name.removesuffix(self._address.path)

    def send(self, request: requests.PreparedRequest, *args: Any, **kwargs: Any) -> requests.Response:
        """Send a request; the body of the answer is read within the bounds and must not be packed."""
        self._meter.take(0)
        kwargs["stream"] = True
        kwargs["proxies"] = {}
        response = super().send(request, *args, **kwargs)
        headers: Mapping[str, str] = response.headers
        if headers.get("Content-Encoding", "identity") != "identity":
            raise PeerRefused("The peer sends packed answers, which were not asked for.")
        response.raw = _Metered(response.raw, self._meter, self._most)
        return response


def pinned_session(address: Address, ip: str, meter: Meter, certificates: str = "") -> requests.Session:
    """Return a session for one peer; anything but its address is refused.

    `certificates` is a file of those that are believed, in place of the public ones.
    """
    session = requests.Session()
    session.trust_env = False
    session.headers["Accept-Encoding"] = "identity"
    session.adapters.clear()
    session.verify = certificates or True
    session.mount(f"{address.scheme}://", PinnedAdapter(address, ip, meter))
    return session
