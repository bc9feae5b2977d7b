"""A peer over HTTP, asked through the client."""

from __future__ import annotations

from collections.abc import Iterator
from pathlib import Path
from typing import get_args

from counterpane.client import Client
from counterpane.client.errors import ClientError, Unreadable, Withdrawn
from counterpane.library.errors import Gone, NotTaken, PeerRefused, PeerUnreachable
from counterpane.library.ports import Change, Shelf
from counterpane.peers.addresses import allowed, resolved
from counterpane.peers.pinned import MOST_ANSWER, Meter, pinned_session
from counterpane_schema.change import Change as ChangeSchema

MOST_OBJECT = 2**20
"""The bytes of one object; an edition, which holds its pattern in words, may have those of an answer. House."""


class HttpPeer:
    """Another library at an address that may be asked."""

    def __init__(self, name: str, client: Client) -> None:
        self.name = name
        self._client = client

    def close(self) -> None:
        """Close the connections."""
        self._client.close()

    def changes(self, after: int) -> Iterator[Change]:
        """Give the lines of its history after a number, to the end."""
        try:
            for each in self._client.changes(after):
                yield self._change(each.data)
        except ClientError as fault:
            raise self._refused(fault) from fault

    def _change(self, line: object) -> Change:
        if ChangeSchema().validate(line):  # type: ignore[arg-type]
            raise PeerRefused(f"A line in the history of {self.name} is not one: {str(line)[:80]}.")
        told = {name: line[name] for name in ("seq", "at", "kind", "slug", "sha256", "event")}  # type: ignore[index]
        if told["kind"] not in get_args(Shelf):
            raise PeerRefused(f"{self.name} keeps something that this version does not know: {told['kind'][:40]}.")
        return Change(**told)

    def object(self, change: Change) -> bytes:
        """Return the bytes of the object that a line names; raise NotTaken for other bytes or too many, and Gone."""
        sha256 = change.sha256 or ""
        try:
            data = self._client.object(sha256, keep=False)
        except Unreadable as fault:
            raise NotTaken(
                sha256, f"{self.name}, number {change.seq}, {change.kind} {change.slug!r}: {fault}"
            ) from fault
        except Withdrawn as fault:
            raise Gone(str(fault)) from fault
        except ClientError as fault:
            raise self._refused(fault) from fault
        if len(data) > (MOST_ANSWER if change.kind == "edition" else MOST_OBJECT):
            raise NotTaken(sha256, f"The object {sha256} of {change.slug!r} has {len(data)} bytes, more than are read.")
        return data

    def _refused(self, fault: ClientError) -> PeerRefused:
        sort = PeerUnreachable if fault.retryable else PeerRefused
        return sort(f"{self.name}: {fault}", fault.hint or "What came is kept; pull again to go on.")


def open_peer(
    url: str, peers: str, token: str | None = None, meter: Meter | None = None, certificates: str = ""
) -> HttpPeer:
    """Return a peer that stands in the operator's list; raise PeerRefused. Its name is resolved here, once.

    `certificates` is a file of those that are believed, the public ones where it is empty.
    """
    address = allowed(url, peers)
    if certificates and not Path(certificates).is_file():
        raise PeerRefused(f"There is no file {certificates!r} of certificates.", "Look at `peer_certificates`.")
    session = pinned_session(address, resolved(address), meter or Meter(), certificates)
    return HttpPeer(address.name, Client(address.base, token, session=session))
