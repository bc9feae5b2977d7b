"""Addresses of peers: read strictly, held against the operator's list, and resolved once."""

from __future__ import annotations

import ipaddress
import socket
from collections.abc import Sequence
from dataclasses import dataclass
from typing import TypeAlias
from urllib.parse import urlsplit

from counterpane.library.errors import PeerRefused

PORTS = {"https": 443, "http": 80}
ALLOW = 'Write `peers = "https://library.example"` in counterpane.toml; several stand with commas between them.'
Ip: TypeAlias = ipaddress.IPv4Address | ipaddress.IPv6Address


@dataclass(frozen=True, slots=True)
class Address:
    """Where a library is served: what stands before `/v1`."""

    scheme: str
    host: str
    port: int
    path: str

    @property
    def name(self) -> str:
        """What the peer is called here: its host, with its port where that is not the usual one."""
        host = f"[{self.host}]" if ":" in self.host else self.host
        return f"{host}{'' if self.port == PORTS[self.scheme] else f':{self.port}'}{self.path}"

    @property
    def base(self) -> str:
        """The address as a client takes it."""
        return f"{self.scheme}://{self.name}"


def address_of(url: str) -> Address:
    """Read an address; raise PeerRefused for one that is no plain http or https address."""
    try:
        parts = urlsplit(url.strip())
        port = parts.port or PORTS[parts.scheme]
    except (ValueError, KeyError):
        raise PeerRefused(f"{url[:80]!r} is no address of a library.", "Write it as https://library.example.") from None
    if not parts.hostname or parts.query or parts.fragment or "@" in parts.netloc or not parts.path.isascii():
        raise PeerRefused(f"{url[:80]!r} is no address of a library.", "Leave out names, questions and fragments.")
    return Address(parts.scheme, parts.hostname, port, parts.path.rstrip("/"))


def allowed(url: str, peers: str) -> Address:
    """Return an address that stands in the operator's list; raise PeerRefused for any other."""
    address = address_of(url)
    listed = [address_of(each) for each in peers.split(",") if each.strip()]
    if address not in listed:
        raise PeerRefused(f"{address.base} is not among the peers that may be asked.", ALLOW)
    return address


def resolved(address: Address) -> str:
    """Return the one IP address that is connected to; raise PeerRefused where it may not be."""
    try:
        found = socket.getaddrinfo(address.host, address.port, type=socket.SOCK_STREAM)
    except OSError as fault:
        raise PeerRefused(f"{address.host} has no address: {fault}.") from None
    ip = str(found[0][4][0])
    _refuse_places(address, ipaddress.ip_address(ip.partition("%")[0]))
    return ip


def _refuse_places(address: Address, ip: Ip) -> None:
    if address.scheme == "http" and not ip.is_loopback:
        raise PeerRefused(f"{address.base} is not on this machine, and http is not secret.", "Use https.")
    odd: Sequence[bool] = (ip.is_link_local, ip.is_multicast, ip.is_unspecified)
    if any(odd):
        raise PeerRefused(f"{address.host} leads to {ip}, where no library is.")
