"""`counterpane size`: one size of a pattern on standard output, and what it refuses."""

from __future__ import annotations

import json

from cli.conftest import Type

TEXT = "Cast on 9 (12, 15) sts.\nRow 1: K9 (12, 15).\n"


def test_the_text_of_one_size_goes_to_standard_output(typed: Type) -> None:
    """Nothing else does."""
    done = typed("size", "-", "--only", "12", stdin=TEXT)
    assert (done.status, done.out, done.err) == (0, "Cast on 12 sts.\nRow 1: K12.\n", "")


def test_the_answer_as_json_is_that_of_the_api(typed: Type) -> None:
    """With the number of the size and all names."""
    done = typed("size", "-", "--only", "2", "--json", stdin=TEXT)
    assert json.loads(done.out) == {"text": "Cast on 12 sts.\nRow 1: K12.\n", "size": 2, "names": [], "left": []}


def test_a_byte_order_mark_stays(typed: Type) -> None:
    """Nothing but the numbers changes."""
    done = typed("size", "-", "--only", "1", stdin="\ufeff" + TEXT)
    assert done.out.startswith("\ufeffCast on 9 sts.")


def test_a_size_that_is_not_there_ends_with_status_two(typed: Type) -> None:
    """With the sizes that there are."""
    done = typed("size", "-", "--only", "newborn", stdin=TEXT)
    assert (done.status, done.out) == (2, "")
    assert "9, 12, 15" in done.err


def test_a_list_that_stays_is_told_on_the_other_stream(typed: Type) -> None:
    """Its place is given as a check gives it."""
    done = typed("size", "-", "--only", "1", stdin=f"{TEXT}Row 2: K4 (5), p to end.\n")
    assert done.err == "standard input:3:9: not one number a size: left as it stands\n"
