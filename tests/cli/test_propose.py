"""`counterpane propose`: recipes for a gauge and a size, and one of them taken on to a plan."""

from __future__ import annotations

import json

import pytest

from cli.conftest import Type

WANTED = ("--gauge", "22x30", "--size", "70x90")


def test_proposals_are_told_with_their_reasons(typed: Type) -> None:
    """Each with its parts; nothing says that one is safe."""
    done = typed("propose", *WANTED, "--limit", "2", "--avoid", "openings,fringe", "--level", "easy")
    assert (done.status, done.out.count("safety: ")) == (0, 2)
    assert "Passed over" in done.out and "not assessed is never a pass" in done.out


def test_the_one_that_is_taken_is_planned(typed: Type) -> None:
    """What --take writes is a request of a plan, with the yarn and the child that were told."""
    more = ("--weight", "double knitting", "--fibre", "cotton", "--months", "0..12", "--use", "pram", "--market", "UK")
    request = json.loads(typed("propose", *WANTED, *more, "--take", "2").out)
    assert request["for"] == {"age_months": [0, 12], "use": "pram", "markets": ["UK"]}
    planned = typed("plan", "-", "--json", stdin=json.dumps(request))
    assert planned.status == 0
    assert json.loads(planned.out)["recipe"]["parts"]["body"]["component"] == request["parts"]["body"]


def test_json_is_what_the_api_gives(typed: Type) -> None:
    """With the yarn held against what is at hand."""
    yarn = ("--ball-g", "50", "--ball-m", "115", "--balls", "20")
    answer = json.loads(typed("propose", *WANTED, *yarn, "--limit", "1", "--skills", "knit-and-purl", "--json").out)
    assert [each["yarn_enough"] for each in answer["proposals"]] == ["yes"]


def test_where_nothing_can_be_proposed_the_status_is_one(typed: Type) -> None:
    """And the reasons are told; a number that is not there is 3."""
    assert typed("propose", "--gauge", "22x30", "--size", "1x1").status == 1
    assert typed("propose", "--gauge", "22x30", "--size", "1x1", "--take", "1").status == 3


@pytest.mark.parametrize(
    "typing",
    [
        ("--gauge", "22", "--size", "70x90"),
        ("--gauge", "22x30", "--size", "70x0"),
        (*WANTED, "--avoid", "snags"),
        (*WANTED, "--skills", "knitting"),
        (*WANTED, "--months", "x"),
        (*WANTED, "--avoid", "wool", "--fibre", "wool"),
        ("--gauge", "22x30", "--size", "no-such-size"),
    ],
)
def test_a_slip_is_told(typed: Type, typing: tuple[str, ...]) -> None:
    """With status 2 and what to write."""
    done = typed("propose", *typing)
    assert (done.status, bool(done.err), "Traceback" in done.err) == (2, True, False)
