"""How calls are sent and answers are read; the calls themselves stand in the classes that are built on this one."""

from __future__ import annotations

import secrets
import time
from collections.abc import Callable, Iterator, Mapping
from types import TracebackType
from typing import TYPE_CHECKING, Any, Self, TypeVar
from urllib.parse import quote

from counterpane.client import results
from counterpane.client.errors import Unreadable
from counterpane.client.remembered import Remembered
from counterpane.client.transport import KEY, Asked, Transport, json_of

if TYPE_CHECKING:
    import requests

T = TypeVar("T", bound=results.Result)
Json = Mapping[str, Any]


class Asking:
    """A library at an address; `token` is needed for writing, and for reading from another machine."""

    def __init__(
        self,
        base: str,
        token: str | None = None,
        sleep: Callable[[float], None] = time.sleep,
        session: requests.Session | None = None,
    ) -> None:
        self._transport = Transport(base, token, sleep, session)
        self._objects = Remembered()

    def __enter__(self) -> Self:
        """Return the client."""
        return self

    def __exit__(self, kind: type[BaseException] | None, error: BaseException | None, at: TracebackType | None) -> None:
        """Close the connections."""
        self.close()

    def close(self) -> None:
        """Close the connections."""
        self._transport.close()

    def _get(self, path: str, params: Json | None = None) -> Json:
        data: Json = json_of(self._transport.send(Asked("GET", path, params)))
        return data

    def _post(self, path: str, body: Json) -> Json:
        # The key is made before the first try: what an earlier try wrote is then not written again.
        key = {KEY: secrets.token_urlsafe(24)}
        data: Json = json_of(self._transport.send(Asked("POST", path, body=body, headers=key)))
        return data

    def _put(self, path: str, body: Json, etag: str) -> Json:
        data: Json = json_of(self._transport.send(Asked("PUT", path, body=body, headers={"If-Match": etag})))
        return data

    def _items(self, path: str, sort: type[T]) -> tuple[T, ...]:
        return tuple(sort.of(each) for each in self._get(path)["items"])

    def _pages(self, path: str | None, params: Json | None, sort: type[T]) -> Iterator[T]:
        while path:
            page = self._get(path, params)
            yield from (sort.of(each) for each in page["items"])
            path, params = page["next"], None
            if path and not path.startswith("/"):
                raise Unreadable(f"The next page lies elsewhere: {path}.")


def step(name: str) -> str:
    """Return a name as one step of a path."""
    return quote(name, safe="")
