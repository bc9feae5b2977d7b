"""`counterpane matrix`: text, JSON and a picture, and the statuses of the contract."""

from __future__ import annotations

import json
from pathlib import Path

import pytest

from cli.conftest import Type
from counterpane.library.parts.matrix import matrix
from counterpane.wiring import open_library


def test_one_body_is_told_pair_by_pair(typed: Type) -> None:
    """Each pair has its state in words, its reason and its correction."""
    done = typed("matrix", "--body", "basket-weave", "--part", "rib-three-by-three-border")
    assert done.status == 0
    assert "  ends: rib-three-by-three-border: with a change\n" in done.out
    assert "Work 1 stitch more at the ends of the border's rows" in done.out


def test_the_picture_is_written_to_a_file(typed: Type, tmp_path: Path) -> None:
    """Only its name goes to standard output."""
    done = typed("matrix", "--kind", "cast-on", "--picture", "matrix.svg")
    assert (done.status, done.out) == (0, "matrix.svg\n")
    assert (tmp_path / "matrix.svg").read_text("utf-8").startswith("<svg ")


def test_json_is_the_answer_of_the_operation(typed: Type) -> None:
    """With a count and nothing beside the body."""
    done = typed("matrix", "--kind", "border", "--count", "140", "--beside", "0", "--json")
    answer = json.loads(done.out)
    assert (answer["count"], answer["beside"]) == (140, 0)
    assert len(answer["rows"]) == len(answer["bodies"])


def test_the_starters_alone_give_the_matrix_of_a_library_of_them(typed: Type) -> None:
    """In the same order, with the same numbers and reasons."""
    whole = json.loads(json.dumps(matrix(open_library(), body="waffle", kind="border")))
    assert json.loads(typed("matrix", "--body", "waffle", "--kind", "border", "--json").out) == whole


@pytest.mark.parametrize(
    ("more", "status"),
    [(("--body", "nothing"), 3), (("--body", "garter-border"), 4), (("--count", "0"), 2), (("--beside", "-1"), 2)],
)
def test_what_cannot_be_answered_has_its_status(more: tuple[str, ...], status: int, typed: Type) -> None:
    """An unknown slug, a part of another kind, and numbers out of range."""
    assert typed("matrix", *more).status == status


@pytest.mark.parametrize(
    ("more", "said"),
    [
        (("--body", "wafle"), "Probably meant: waffle."),
        (("--part", "gartr-border"), "Probably meant: garter-border."),
        (("--body", "nosuch"), "The nearest names that are kept: "),
    ],
)
def test_a_slug_that_is_not_kept_names_the_nearest(more: tuple[str, ...], said: str, typed: Type) -> None:
    """Among those of the same kind: bodies for a body."""
    done = typed("matrix", *more)
    assert (done.status, said in done.err) == (3, True)
    assert "-border" not in done.err or more[0] == "--part"
