"""What README.md shows is what the program does."""

from __future__ import annotations

import re
import subprocess
from pathlib import Path

import pytest

from docs.console import TOP, Step, blocks, prints

README = (TOP / "README.md").read_text("utf-8")


@pytest.mark.parametrize("steps", blocks(README), ids=lambda steps: steps[0].command.split("\n")[0][:60])
def test_a_console_block_prints_what_it_shows(steps: tuple[Step, ...], desk: Path, served: dict[str, str]):
    """Each command of the block runs in the demo's neighbourhood and prints the lines shown."""
    for step in steps:
        done = subprocess.run(
            ["bash", "-c", step.command],
            cwd=desk,
            env=served,
            stdout=subprocess.PIPE,
            stderr=subprocess.STDOUT,
            text=True,
            timeout=60,
            check=False,
        )
        assert not step.shown or prints(step.shown, done.stdout), done.stdout


def test_the_readme_opens_with_the_job_and_two_commands():
    """There are two shell blocks of one line: the first ends in the demo, the second in the tests."""
    commands = re.findall(r"^```sh\n(.*)\n```$", README, re.MULTILINE)
    assert len(commands) == len(re.findall("^```sh$", README, re.MULTILINE)) == 2
    assert commands[0].endswith("counterpane demo")
    assert "pytest" in commands[1]
