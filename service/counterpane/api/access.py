"""One JSON line a request: id, method, route template, status, time; no bodies, no tokens, no slugs.

The standard library's logging would take a good part of the time in which a stored answer is sent, so that a line is
written straight to where it goes, in one call: lines of several processes do not mix.
"""

from __future__ import annotations

import os
import time
import traceback
from collections.abc import Callable
from dataclasses import dataclass
from datetime import UTC, datetime
from typing import Any

import orjson

STANDARD_ERROR = 2


@dataclass(frozen=True, slots=True)
class Journal:
    """Where lines go; None keeps silent."""

    write: Callable[[bytes], object] | None = None

    def request(self, request_id: str, method: str, route: str | None, status: int, began: float) -> None:
        """Say that a request was answered; `began` is a reading of `time.perf_counter`."""
        if self.write:
            spent = round((time.perf_counter() - began) * 1000, 2)
            members = {"request_id": request_id, "method": method, "route": route, "status": status, "ms": spent}
            self.write(_line("request", members))

    def uncounted(self, why: Exception) -> None:
        """Say that requests are served without being counted."""
        if self.write:
            self.write(_line("uncounted", {"why": str(why)}))

    def failure(self, request_id: str, route: str | None, error: BaseException) -> None:
        """Say that this program failed, with the traceback."""
        if self.write:
            told = "".join(traceback.format_exception(error))
            self.write(_line("failure", {"request_id": request_id, "route": route, "traceback": told}))


SILENT = Journal()
ON_STANDARD_ERROR = Journal(lambda line: os.write(STANDARD_ERROR, line))


def _line(event: str, members: dict[str, Any]) -> bytes:
    at = datetime.now(UTC).isoformat(timespec="milliseconds")
    return orjson.dumps({"at": at, "event": event, **members}, default=str, option=orjson.OPT_APPEND_NEWLINE)
