"""Test knits, answers and pieces from the command line, and what was corrected since an edition."""

from __future__ import annotations

import json

import pytest

from cli.conftest import Type

STORE = ("--store", "lib.db")
WHERE = ("first-frost", "-", *STORE)
KNIT = 'on = "2026-12-12"\ngrams = 352\nmetres_per_100g = 230\n[washed]\nstitches = 22.5\nrows = 30\n'
QUERY = '[[queries]]\nsection = "body"\nrow = 3\nquestion = "Which side?"\n'
ANSWER = 'section = "body"\nrow = 3\nquestion = "Which side?"\nanswer = "The right side."\n'
PIECE = 'on = "2026-12-14"\nwashed = true\nopenings = [{ mm = 6, found_by = "estimate" }]\n'


def test_a_test_knit_is_noted_and_held_against_its_plan(typed: Type) -> None:
    """One knit is said to be one, and what it does not tell is left out with its reason."""
    done = typed("note", "add", "test-knit", *WHERE, "--by", "Odile", stdin=KNIT)
    assert (done.status, done.out.partition(",")[0]) == (0, "noted test-knit 1 of first-frost")
    shown = typed("note", "show", "test-knit", "first-frost", "1", *STORE).out
    assert "stitches: 22.5 to 10 cm against 22.0: +0.5 (+2.3 %)" in shown
    told = typed("note", "knitted", "first-frost", *STORE).out
    assert "It rests on 1 knit" in told
    assert "Not in stitches_a_minute: test-knit 1. The hours are not told." in told


def test_the_answer_is_that_of_the_api(typed: Type) -> None:
    """As JSON each act gives what the library gives."""
    typed("note", "add", "test-knit", *WHERE, "--by", "Odile", stdin=KNIT)
    shown = json.loads(typed("note", "show", "test-knit", "first-frost", "1", "--json", *STORE).out)
    (item,) = json.loads(typed("note", "knitted", "first-frost", "--json", *STORE).out)["items"]
    (listed,) = json.loads(typed("note", "list", "test-knit", "first-frost", "--json", *STORE).out)["items"]
    assert item["compared"] == shown["compared"]
    assert listed["sha256"] == shown["sha256"]


def test_a_row_that_two_ask_about_is_marked(typed: Type) -> None:
    """The answer stands with its row, and in the list of answers."""
    for name in ("Odile", "Noor"):
        typed("note", "add", "test-knit", *WHERE, "--by", name, stdin=KNIT + QUERY)
    typed("note", "add", "answer", *WHERE, "--by", "Ines", stdin=ANSWER)
    told = typed("note", "rows", "first-frost", *STORE).out
    assert "body, row 3: look at it, 2 knitters asked" in told
    assert "  answer 3: The right side." in told
    assert "The right side." in typed("note", "list", "answer", "first-frost", *STORE).out
    assert "body, row 3: Which side?" in typed("note", "show", "answer", "first-frost", "3", *STORE).out


def test_a_piece_that_was_only_estimated_is_not_passed(typed: Type) -> None:
    """What does not count is said to, and so is what was not assessed."""
    typed("note", "add", "piece", *WHERE, "--by", "Odile", stdin=PIECE)
    told = typed("note", "show", "piece", "first-frost", "1", *STORE).out
    assert "hole_mm: not known, does not count" in told
    assert "Not assessed, which is no pass: " in told


def test_one_is_taken_back_by_who_wrote_it_down(typed: Type) -> None:
    """Nobody else may, and its words are gone."""
    typed("note", "add", "piece", *WHERE, "--by", "Odile", stdin=PIECE)
    back = ("note", "take-back", "piece", "first-frost", "1", "--say", "Weighed wet.", *STORE, "--by")
    assert typed(*back, "Bram").status == 4
    assert typed(*back, "Odile").out == "took piece 1 of first-frost back\n"
    done = typed("note", "show", "piece", "first-frost", "1", *STORE)
    assert (done.status, "Weighed wet." in done.err) == (3, True)


@pytest.mark.parametrize(
    ("argv", "stdin", "status", "said"),
    [
        (("add", "piece", *WHERE, "--by", "Odile"), PIECE + 'child = "x"\n', 2, "child"),
        (("add", "piece", *WHERE, "--by", "Odile"), "", 2, "on"),
        (("add", "answer", *WHERE, "--by", "Odile"), ANSWER.replace("3", "9999"), 2, "no row 9999"),
        (("add", "test-knit", "nope", "-", *STORE, "--by", "Odile"), KNIT, 3, "no recipe 'nope'"),
        (("list", "test-knit", "nope", *STORE), "", 3, "no recipe 'nope'"),
        (("rows", "nope", *STORE), "", 3, "no recipe 'nope'"),
        (("show", "piece", "first-frost", "7", *STORE), "", 3, "no jotting 7"),
        (("show", "sock", "first-frost", "7", *STORE), "", 2, "invalid choice"),
    ],
)
def test_what_is_refused_says_why(typed: Type, argv: tuple[str, ...], stdin: str, status: int, said: str) -> None:
    """Each with its own status and sentence."""
    done = typed("note", *argv, stdin=stdin)
    assert (done.status, said in done.err) == (status, True), done.err


def test_whoever_has_a_copy_hears_of_a_correction(typed: Type) -> None:
    """The status says whether there is one; each form of the edition names the command."""
    typed("edition", "add", "first-frost", "--by", "Ines", "--date", "2026-11-26", *STORE)
    asked = ("edition", "corrections", "first-frost", "1", *STORE)
    done = typed(*asked)
    assert (done.status, "This library knows of no correction." in done.out) == (0, True)
    typed("note", "add", "answer", *WHERE, "--by", "Ines", stdin=ANSWER + "wrong = true\n")
    done = typed(*asked)
    assert (done.status, "body, row 3: The right side." in done.out) == (1, True)
    assert json.loads(typed(*asked, "--json").out)["corrected"] is True
    assert "counterpane edition corrections first-frost 1" in typed("edition", "show", "first-frost", *STORE).out


def test_a_known_address_stands_on_the_page(typed: Type, monkeypatch: pytest.MonkeyPatch) -> None:
    """In the foot that a browser prints on each page, too; an address with a quotation mark is refused."""
    typed("edition", "add", "first-frost", "--by", "Ines", "--date", "2026-11-26", *STORE)
    monkeypatch.setenv("COUNTERPANE_READERS_AT", "https://loft.example/")
    page = typed("edition", "show", "first-frost", "--as", "html", *STORE).out
    place = "Ask https://loft.example/v1/recipes/first-frost/editions/1/corrections or say"
    assert f'@bottom-center {{ content: "Was edition 1 of first-frost corrected? {place}' in page
    monkeypatch.setenv("COUNTERPANE_READERS_AT", 'https://loft.example/"x')
    assert typed("edition", "show", "first-frost", *STORE).status == 2
