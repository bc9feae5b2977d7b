"""Who asks: the holder of a token, or an address."""

from __future__ import annotations

from ipaddress import IPv6Address
from typing import Any

from counterpane.library.errors import LibraryError
from counterpane.library.ports import Holder
from counterpane.library.review import tokens
from counterpane.library.services import Services

_HOLDER = "counterpane.holder"
"""Under which the holder stands in the environment of a request, so that a token is looked up once."""
SITE_BITS = 64
"""The last bits of an IPv6 address, which whoever has a network chooses (RFC 4291, 2.5.4)."""


def holder_in(services: Services, environ: dict[str, Any]) -> Holder:
    """Return whom the token of a request stands for; raise Unknown where there is none that holds."""
    found: Holder | None = environ.get(_HOLDER)
    if found is None:
        scheme, _, token = environ.get("HTTP_AUTHORIZATION", "").partition(" ")
        sent = token.strip() if scheme.lower() == "bearer" else None
        found = environ[_HOLDER] = tokens.holder_of(services.store, sent, services.now()[:10])
    return found


def caller_of(services: Services, environ: dict[str, Any]) -> str:
    """Return by what a caller is told from others: the hash of a token that holds, else the address.

    What a proxy says about an address is left aside, since anybody can say it.
    """
    if "HTTP_AUTHORIZATION" in environ:
        try:
            return f"token {holder_in(services, environ).sha256}"
        except LibraryError:  # Whoever guesses tokens is counted as well.
            pass
    return f"address {site_of(environ.get('REMOTE_ADDR') or '')}"


def site_of(address: str) -> str:
    """Return an address of IPv4 as it is, and of IPv6 the network of 64 bits; what is neither stays as it is."""
    if ":" not in address:
        return address
    try:
        whole = IPv6Address(address)
    except ValueError:
        return address
    return str(whole.ipv4_mapped or IPv6Address(int(whole) >> SITE_BITS << SITE_BITS))
