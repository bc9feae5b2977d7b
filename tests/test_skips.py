"""The rule against skips, tried on files of its own."""

from __future__ import annotations

import os
import subprocess
import sys
from pathlib import Path

import pytest

PASSING = "def test_nothing():\n    assert True\n"
SKIPS = {
    "a test": f"import pytest\n{PASSING}@pytest.mark.skip\ndef test_skipped():\n    pass\n",
    "an expected failure": f"import pytest\n{PASSING}@pytest.mark.xfail\ndef test_wrong():\n    assert False\n",
    "a file": f"import pytest\npytest.importorskip('no_such_module')\n{PASSING}",
}


@pytest.mark.parametrize("text", SKIPS.values(), ids=SKIPS)
@pytest.mark.parametrize(("ci", "status"), [("true", 1), ("", 0)])
def test_a_skip_fails_under_ci_and_only_there(tmp_path: Path, text: str, ci: str, status: int):
    """The same files pass where nobody asks for the whole."""
    (tmp_path / "conftest.py").write_text(Path(__file__).with_name("conftest.py").read_text("utf-8"), "utf-8")
    (tmp_path / "test_it.py").write_text(text, "utf-8")
    (tmp_path / "test_other.py").write_text(PASSING, "utf-8")
    environment = {**os.environ, "CI": ci, "PYTEST_DISABLE_PLUGIN_AUTOLOAD": "1"}
    command = [
        sys.executable,
        "-m",
        "pytest",
        "-q",
        "--rootdir",
        str(tmp_path),
        "--import-mode=importlib",
        str(tmp_path),
    ]
    done = subprocess.run(command, env=environment, capture_output=True, text=True, timeout=60, check=False)
    assert (done.returncode != 0) == bool(status), done.stdout
