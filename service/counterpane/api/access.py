"""One JSON line a request on standard error: id, method, route template, status, time; no bodies, tokens or slugs."""

from __future__ import annotations

import logging
import sys
import time
from datetime import UTC, datetime
from typing import Any

import orjson

LOGGER = logging.getLogger("counterpane")


class JsonLines(logging.Formatter):
    """Writes a record as one JSON object; what was passed in `extra={"fields": …}` becomes its members."""

    def format(self, record: logging.LogRecord) -> str:
        """Return the line."""
        at = datetime.fromtimestamp(record.created, UTC).isoformat(timespec="milliseconds")
        line: dict[str, Any] = {"at": at, "level": record.levelname.lower(), "event": record.getMessage()}
        line |= getattr(record, "fields", {})
        if record.exc_info:
            line["traceback"] = self.formatException(record.exc_info)
        return orjson.dumps(line, default=str).decode()


def log_to_standard_error() -> None:
    """Send the lines to standard error, once however often it is called."""
    if not LOGGER.handlers:
        handler = logging.StreamHandler(sys.stderr)
        handler.setFormatter(JsonLines())
        LOGGER.addHandler(handler)
        LOGGER.setLevel(logging.INFO)
        LOGGER.propagate = False


def log_request(request_id: str, method: str, route: str | None, status: int, began: float) -> None:
    """Log that a request was answered; `began` is a reading of `time.perf_counter`."""
    if LOGGER.isEnabledFor(logging.INFO):
        spent = round((time.perf_counter() - began) * 1000, 2)
        fields = {"request_id": request_id, "method": method, "route": route, "status": status, "ms": spent}
        LOGGER.info("request", extra={"fields": fields})


def log_failure(request_id: str, route: str | None, error: BaseException) -> None:
    """Log a fault of this program with its traceback."""
    LOGGER.error("failure", exc_info=error, extra={"fields": {"request_id": request_id, "route": route}})
