"""The document of the whole API; `python -m counterpane.api.document PATH` writes it to a file."""

from __future__ import annotations

import json
import sys
from collections.abc import Mapping
from pathlib import Path
from typing import Any

from counterpane.api.catalogue import OPERATIONS
from counterpane.api.describing import document_of


def document() -> dict[str, Any]:
    """Return the document of all operations."""
    return document_of(OPERATIONS)


def written(made: Mapping[str, Any]) -> str:
    """Return the document as the committed file has it."""
    return json.dumps(made, indent=2, ensure_ascii=False, sort_keys=True) + "\n"


if __name__ == "__main__":
    Path(sys.argv[1]).write_text(written(document()), "utf-8")
