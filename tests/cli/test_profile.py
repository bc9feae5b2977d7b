"""Lists of wards and charities in a library, from the command line."""

from __future__ import annotations

import json
from pathlib import Path

import pytest

from cli.conftest import Type
from cli.test_safety import LIST, PLAN

STORE = ("--store", "lib.db")
BY = ("--by", "Ines", *STORE)


@pytest.fixture
def ward(typed: Type, tmp_path: Path) -> Path:
    """Return the file of a list that is kept in a library."""
    path = tmp_path / "ward-3.toml"
    path.write_text(LIST, encoding="utf-8")
    assert typed("profile", "add", "ward-3.toml", *BY).status == 0
    return path


def test_a_list_is_kept_under_the_name_of_its_file(typed: Type, ward: Path) -> None:
    """It comes back as TOML that is the same list, beside those that ship."""
    shown = typed("profile", "show", "ward-3", *STORE).out
    assert shown.startswith("# ward-3, revision 1, sha256 ")
    assert "at_most = 5" in shown and 'dated = "2026-10-01"' in shown
    listed = typed("profile", "list", *STORE).out
    assert "ward-3" in listed and "neonatal-unit-oxford-relayed" in listed


def test_a_changed_list_is_the_next_revision(typed: Type, ward: Path) -> None:
    """What `show` writes can be changed and given to `revise`; the first revision stays."""
    first = json.loads(typed("profile", "show", "ward-3", "--json", *STORE).out)
    changed = typed("profile", "show", "ward-3", *STORE).out.replace("2026-10-01", "2026-11-01")
    done = typed("profile", "revise", "-", "--slug", "ward-3", *BY, stdin=changed)
    assert done.out.startswith("at ward-3, revision 2, ")
    assert "2026-11-01" in typed("profile", "show", "ward-3", *STORE).out
    assert "2026-10-01" in typed("profile", "show", "ward-3", "--revision", first["sha256"], *STORE).out


def test_the_same_list_again_stays_as_it_is(typed: Type, ward: Path) -> None:
    """Nothing is written where nothing changed."""
    assert typed("profile", "revise", str(ward), *BY).out.startswith("at ward-3, revision 1, ")


@pytest.mark.parametrize("command", [["plan"], ["write", "--as", "text"]])
def test_a_plan_names_a_kept_list(typed: Type, ward: Path, tmp_path: Path, command: list[str]) -> None:
    """The answer says whose it is, of which day and at which revision, in a pattern too."""
    (tmp_path / "plan.toml").write_text(PLAN, encoding="utf-8")
    kept = json.loads(typed("profile", "show", "ward-3", "--json", *STORE).out)
    shown = typed(*command, "plan.toml", "--profile", "ward-3", *STORE).out
    assert f"Ward 3, 2026-10-01 (ward-3, revision {kept['sha256'][:12]})" in " ".join(shown.split())


@pytest.mark.parametrize(
    ("argv", "status", "said"),
    [
        (["add", "ward-3.toml", *BY], 4, "There is a profile 'ward-3' already."),
        (["revise", "ward-3.toml", "--slug", "ward-4", *BY], 3, "There is no profile 'ward-4'."),
        (["show", "ward-4", *STORE], 3, "There is no profile 'ward-4'."),
        (["show", "ward-3", "--revision", "0" * 64, *STORE], 3, "has no revision"),
        (["add", "-", *BY], 2, "/slug"),
        (["add", "gone.toml", *BY], 3, "there is no such file"),
        (["add", "ward-3.toml", "--slug", "Ward 3", *BY], 2, "lower-case"),
        (["add", "ward-3.toml", "--by", " ", *STORE], 2, "printable"),
        (["add", "ward-3.toml", *STORE], 2, "--by"),
        ([], 2, "ACT"),
    ],
)
def test_what_cannot_be_done_ends_with_its_status(
    typed: Type, ward: Path, argv: list[str], status: int, said: str
) -> None:
    """Each says why, and never ends in a traceback."""
    ended = typed("profile", *argv)
    assert (ended.status, said in ended.err, "Traceback" in ended.err) == (status, True, False)


def test_a_list_that_does_not_hold_is_not_kept(typed: Type, tmp_path: Path) -> None:
    """The place of the fault is named."""
    (tmp_path / "ward.toml").write_text(LIST.replace("at_most", "wants"), encoding="utf-8")
    ended = typed("profile", "add", "ward.toml", *BY)
    assert ended.status == 2 and "/items/0" in ended.err
    assert "ward" not in typed("profile", "list", *STORE).out.split()
