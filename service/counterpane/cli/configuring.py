"""Settings as a command sees them: its options, then the environment, then the file in this folder, then defaults."""

from __future__ import annotations

import os
from collections.abc import Mapping
from pathlib import Path
from typing import Any

from counterpane.settings import FILE, Setting, gather


def settings_of(**flags: Any) -> Mapping[str, Setting]:
    """Return all settings by name; an option of None was not typed."""
    return gather(flags, os.environ, Path(FILE))
