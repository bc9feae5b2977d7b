"""`counterpane adopt`: TOML on standard output, questions on standard error, statuses of the contract."""

from __future__ import annotations

import json
import shutil
from pathlib import Path

import pytest

from cli.conftest import Type
from counterpane.seeding import load_components, seeds_root

ROWS = "Pea eyelets\n(multiple of 4 sts plus 1)\nRow 1: K1, *yo, k2tog, k2; rep from * to end.\nRow 2: Purl.\n"
WHO = ("--licence", "CC0-1.0", "--author", "anna", "--source", "common-practice")


@pytest.mark.parametrize(
    ("kind", "more"), [("body", ()), ("border", ("--across-corner", "no")), ("selvedge", ("--slug", "pea-edge"))]
)
def test_what_is_written_loads_as_a_seed(kind: str, more: tuple[str, ...], typed: Type, tmp_path: Path) -> None:
    """The file goes through the same loader and the same proof as what ships with the program."""
    for name in ("stitches", "sources"):
        shutil.copytree(seeds_root() / name, tmp_path / name)
    done = typed("adopt", "-", "--kind", kind, *WHO, *more, "--into", "components", stdin=ROWS)
    (component,) = load_components(tmp_path)

    assert (done.status, component.name, component.kind) == (0, "Pea eyelets", kind)
    assert done.out == f"components/{kind}/{component.slug}.toml\n"


def test_what_is_missing_is_asked_for_with_its_option(typed: Type) -> None:
    """The TOML goes to standard output as far as it is known, the questions to standard error."""
    done = typed("adopt", "-", stdin=ROWS)
    asked = [line.rpartition("Give it with ")[2] for line in done.err.splitlines() if line.startswith("still to say")]

    assert done.status == 1
    assert asked == ["--kind body|border|selvedge.", "--licence TEXT.", "--author TEXT.", "--source TEXT."]
    assert done.out.startswith("# It takes a multiple of 4 stitches plus 1, at least 5.\n")
    assert "licence" not in done.out
    assert "kind" not in done.out


def test_a_source_that_is_not_there_is_named(typed: Type) -> None:
    """The component is whole; whoever loads it as a seed needs the file of its source too."""
    done = typed("adopt", "-", "--kind", "body", *WHO[:-1], "grandmother", stdin=ROWS)

    assert done.status == 0
    assert "describe it in sources/grandmother.toml" in done.err


def test_nothing_is_written_before_all_is_said(typed: Type, tmp_path: Path) -> None:
    """A component with open questions makes no file."""
    assert typed("adopt", "-", "--kind", "body", "--into", "parts", stdin=ROWS).status == 1
    assert not (tmp_path / "parts").exists()


def test_a_file_that_is_there_is_left_alone(typed: Type) -> None:
    """Adopting twice into one folder is refused with 4."""
    line = ("adopt", "-", "--kind", "body", *WHO, "--into", "parts")

    assert typed(*line, stdin=ROWS).status == 0
    assert typed(*line, stdin=ROWS).status == 4


def test_findings_come_with_their_places(typed: Type) -> None:
    """A text with an error gives nothing but its findings, and 1."""
    done = typed("adopt", "-", "--kind", "body", *WHO, stdin=ROWS.replace("plus 1", "plus 3"))

    assert (done.status, done.out) == (1, "")
    assert done.err.startswith("standard input:2:2: error: The text promises a multiple of 4 plus 3")


def test_json_holds_content_derivation_and_questions(typed: Type) -> None:
    """With --json one document is written, a refusal as the problem that the API would send."""
    found = json.loads(typed("adopt", "-", "--kind", "body", "--json", stdin=ROWS).out)
    problem = json.loads(typed("adopt", "-", "--json", stdin="Row 1: K2tgo.\n").out)

    assert found["derived"]["multiple"] == {"of": 4, "plus": 1, "least": 5}
    assert [each["pointer"] for each in found["questions"]] == ["/licence", "/author", "/source"]
    assert (problem["status"], problem["findings"][0]["rule"]) == (422, "unknown-term")


@pytest.mark.parametrize(
    ("more", "status"),
    [
        (("nowhere.txt",), 3),
        (("-", "--kind", "cast-on"), 2),
        (("-", "--slug", "../up"), 2),
        (("-", "--year", "12"), 2),
        ((), 2),
    ],
)
def test_usage_and_missing_files_have_their_statuses(more: tuple[str, ...], status: int, typed: Type) -> None:
    """A kind that is not worked in rows is no kind to adopt."""
    assert typed("adopt", *more).status == status


def test_a_texture_that_ships_already_is_named(typed: Type) -> None:
    """It is a note: the component is made all the same."""
    rows = (
        "Small windows\nRow 1 (RS): *p1, k2; rep from * to end.\nRow 2: *p2, k1; rep from * to end.\n"
        "Row 3: *p1, k2; rep from * to end.\nRow 4: knit.\n"
    )
    done = typed("adopt", "-", "--kind", "body", *WHO, stdin=rows)

    assert done.status == 0
    assert "turned or mirrored as it may be: waffle." in done.err


def test_rows_of_one_count_are_asked_whether_they_repeat(typed: Type) -> None:
    """Old books leave the star out: four rows over 2 stitches are meant to go on to the end of the blanket."""
    rows = "Cuffs\nRows 1 to 3: knit.\nRow 4: bring the wool forward, knit two together.\n"
    alone = typed("adopt", "-", "--kind", "body", *WHO, stdin=rows)
    stated = typed("adopt", "-", "--kind", "body", *WHO, stdin=rows.replace("\n", "\n(multiple of 2 sts)\n", 1))
    assert "exactly 2 stitches" in alone.err and "(multiple of 2 sts)" in alone.err
    assert "takes exactly" not in stated.err


def test_what_is_kept_says_how_to_use_it(typed: Type) -> None:
    """A file alone is in no plan yet."""
    done = typed("adopt", "-", "--kind", "body", "--into", "parts", *WHO, stdin=ROWS)
    assert (done.status, done.out) == (0, "parts/body/pea-eyelets.toml\n")
    assert "to use it: " in done.err and "POST /v1/components" in done.err
