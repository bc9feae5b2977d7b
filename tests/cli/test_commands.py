"""The smaller commands, and how every command ends."""

from __future__ import annotations

import json
import os
import subprocess
import sys
from contextlib import closing
from pathlib import Path

import pytest

from cli.conftest import Type
from counterpane import __version__
from counterpane.cli import INTERRUPTED, endings, output
from counterpane.library.review import tokens
from counterpane.wiring import open_library


def test_explain_shows_the_page_of_a_rule(typed: Type):
    """The bad example, the good one and the source are on it."""
    done = typed("explain", "row-runs-short")
    assert done.status == 0
    assert [part in done.out for part in ("Bad:\n", "Good:\n", "Source: ")] == [True] * 3


def test_explain_takes_a_slug_that_does_not_exist_for_the_nearest(typed: Type):
    """The status is 3 and the hint names the rule that was probably meant."""
    done = typed("explain", "row-run-short")
    assert (done.status, done.out) == (3, "")
    assert "Probably meant: row-runs-short." in done.err


def test_a_part_is_no_rule_and_the_list_of_parts_is_named(typed: Type):
    """Nothing is near, so the two lists are said."""
    done = typed("explain", "waffle")
    assert (done.status, "`counterpane find` the parts" in done.err) == (3, True)


def test_a_token_stands_alone_on_standard_output_and_works(typed: Type):
    """Only its hash is in the store, which knows its role and name."""
    done = typed("token", "create", "--role", "contributor", "--for", "Ines", "--store", "lib.db")
    with closing(open_library("lib.db").store) as store:
        holder = tokens.holder_of(store, done.out.strip())
    assert (done.status, done.out.count("\n"), done.err) == (0, 1, "")
    assert (holder.role, holder.name) == ("contributor", "Ines")


@pytest.mark.parametrize("name", ["", "  ", "a\nb", "x" * 201])
def test_a_token_for_nobody_ends_with_2(typed: Type, name: str):
    """No store is made on the way."""
    assert typed("token", "create", "--role", "reader", "--for", name, "--store", "lib.db").status == 2
    assert not Path("lib.db").exists()


def test_a_store_that_is_something_else_ends_with_2_and_stays_as_it_is(typed: Type):
    """A text is not taken for a library."""
    Path("notes.txt").write_text("not a library\n" * 100)
    done = typed("token", "create", "--role", "reader", "--for", "Ines", "--store", "notes.txt")
    assert (done.status, done.out) == (2, "")
    assert Path("notes.txt").read_text() == "not a library\n" * 100


@pytest.mark.parametrize("command", ["serve", "token create --role reader --for Ines"])
def test_a_store_on_a_server_that_is_not_supported_says_so(typed: Type, command: str):
    """The hint names what is."""
    done = typed(*command.split(), "--store", "postgresql://localhost/blankets")
    assert done.status == 2
    assert "Name a file" in done.err


def test_settings_say_where_each_value_comes_from(typed: Type, monkeypatch: pytest.MonkeyPatch):
    """The environment comes before the file, and the file before the default."""
    monkeypatch.setenv("COUNTERPANE_PORT", "9000")
    Path("counterpane.toml").write_text('port = 8000\nstore = "here.db"\n')
    known = {each["name"]: each for each in json.loads(typed("settings", "--json").out)}
    assert (known["port"]["value"], known["port"]["from"]) == (9000, "environment")
    assert (known["store"]["value"], known["store"]["from"]) == ("here.db", "counterpane.toml")
    assert known["host"]["from"] == "default"


@pytest.mark.parametrize(
    ("text", "said"), [("prot = 1", "Probably meant: port."), ('port = "x"', "port"), ("= 1", "read")]
)
def test_a_settings_file_with_a_slip_ends_with_2(typed: Type, text: str, said: str):
    """A slip of the pen is never silent."""
    Path("counterpane.toml").write_text(text)
    done = typed("settings")
    assert done.status == 2
    assert said in done.err


@pytest.mark.parametrize("argv", [[], ["chekc"], ["check"], ["check", "-", "--cast"], ["token"], ["write", "x"]])
def test_wrong_usage_ends_with_2(typed: Type, argv: list[str]):
    """The message is on standard error."""
    done = typed(*argv)
    assert (done.status, done.out) == (2, "")
    assert "usage: counterpane" in done.err


def test_the_version_is_that_of_the_package(typed: Type):
    """It is data, so it is on standard output."""
    assert typed("--version").out == f"counterpane {__version__}\n"


def test_an_unforeseen_error_is_one_line_and_never_a_traceback(capsys: pytest.CaptureFixture[str]):
    """Its message is cut to a readable length."""

    def fails() -> int:
        raise ZeroDivisionError("x" * 1000)

    assert endings.guarded(fails) == endings.USAGE
    said = capsys.readouterr().err
    assert said.startswith("counterpane: a fault in Counterpane itself: ZeroDivisionError: xxx")
    assert len(said) < 500


def test_an_interruption_ends_with_130(capsys: pytest.CaptureFixture[str]):
    """It says that nothing is half written."""

    def interrupted() -> int:
        raise KeyboardInterrupt

    assert endings.guarded(interrupted) == INTERRUPTED
    assert "interrupted" in capsys.readouterr().err


def test_a_file_is_written_whole_or_not_at_all(tmp_path: Path):
    """What was there stays when the writing fails, and nothing is left beside it."""
    place = tmp_path / "it.txt"
    output.save(place, "before")
    with pytest.raises(TypeError):
        output.save(place, 7)  # type: ignore[arg-type]
    assert place.read_text() == "before"
    assert [path.name for path in tmp_path.iterdir()] == ["it.txt"]


def test_a_reader_that_goes_away_ends_the_output_quietly():
    """The status stays that of the check, and standard error stays empty."""
    rows = "".join(f"Row {n}: *k2, p2; rep from * to end.\n" for n in range(1, 100))
    code = "import sys; from counterpane.cli import main; sys.exit(main(['check', '-', '--json']))"
    environment = {**os.environ, "PYTHONPATH": os.pathsep.join(sys.path)}
    with subprocess.Popen(
        [sys.executable, "-c", code], env=environment, stdin=-1, stdout=-1, stderr=-1, text=True
    ) as running:
        assert running.stdin and running.stdout and running.stderr
        running.stdout.close()
        running.stdin.write(rows)
        running.stdin.close()
        assert running.stderr.read() == ""
        assert running.wait(60) == 0
