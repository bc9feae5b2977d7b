"""The rule against skips, tried on files of its own."""

from __future__ import annotations

import os
import subprocess
import sys
from pathlib import Path

import pytest

PASSING = "def test_nothing():\n    assert True\n"
SKIPS = {
    "a test": (
        f"import pytest\n{PASSING}@pytest.mark.skip\ndef test_skipped():\n    pass\n",
        pytest.ExitCode.TESTS_FAILED,
    ),
    "an expected failure": (
        f"import pytest\n{PASSING}@pytest.mark.xfail\ndef test_wrong():\n    assert False\n",
        pytest.ExitCode.TESTS_FAILED,
    ),
    "a file": (f"import pytest\npytest.importorskip('no_such_module')\n{PASSING}", pytest.ExitCode.INTERRUPTED),
}


def _run(folder: Path, text: str, ci: str) -> tuple[int, str]:
    (folder / "conftest.py").write_text(Path(__file__).with_name("conftest.py").read_text("utf-8"), "utf-8")
    (folder / "test_it.py").write_text(text, "utf-8")
    (folder / "test_other.py").write_text(PASSING, "utf-8")
    paths = {"PYTHONPATH": os.pathsep.join(sys.path), "PYTEST_DISABLE_PLUGIN_AUTOLOAD": "1"}
    command = [sys.executable, "-m", "pytest", "-q", "--rootdir=.", "--import-mode=importlib", "."]
    environment = {**os.environ, **paths, "CI": ci}
    done = subprocess.run(command, cwd=folder, env=environment, capture_output=True, text=True, timeout=60, check=False)
    return done.returncode, done.stdout


@pytest.mark.parametrize(("text", "status"), SKIPS.values(), ids=SKIPS)
def test_a_skip_fails_under_ci_and_only_there(tmp_path: Path, text: str, status: int):
    """The same files pass where nobody asks for the whole."""
    strict, said = _run(tmp_path, text, "true")
    assert strict == status
    assert "CI=true allows no skip" in said
    assert _run(tmp_path, text, "")[0] == pytest.ExitCode.OK
