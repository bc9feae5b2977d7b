"""`counterpane label`: the same answer as the API, and the words a person reads."""

from __future__ import annotations

import json

from cli.conftest import Type

YARNS = """
markets = ["UK", "AU"]
[[yarns]]
name = "body"
grams = 320
fibre = [{ fibre = "merino", percent = 75 }, { fibre = "nylon", percent = 25 }]
[[yarns]]
name = "edge"
grams = 46
fibre = [{ fibre = "cotton", percent = 100 }]
"""


def test_the_label_reads_as_it_is_printed(typed: Type) -> None:
    """(320 × 75 %) / 366 is 65.57 %: by hand."""
    done = typed("label", "-", stdin=YARNS)
    assert done.status == 0
    assert "66 % (65.57) wool" in done.out
    assert "66% wool, 22% polyamide, 12% cotton" in done.out
    assert "fibre-name-of-trade" in done.out


def test_the_json_is_that_of_the_api(typed: Type) -> None:
    """Exact shares and all."""
    answer = json.loads(typed("label", "-", "--json", stdin=YARNS).out)
    assert answer["composition"]["fibres"][0]["exact"] == "4000/61"


def test_care_is_told_with_what_sets_it(typed: Type) -> None:
    """And what a yarn does not tell is said to be not known."""
    care = 'care = { washing = "machine 60", bleaching = "none" }\n'
    text = YARNS.replace('name = "body"\n', 'name = "body"\nsuperwash = true\n' + care) + care.replace("60", "40")
    done = typed("label", "-", stdin=text)
    assert "Machine wash at 40 °C at most, normal process (because of edge)." in done.out
    assert "Ironing is not known: body and edge do not tell ironing." in " ".join(done.out.split())


def test_a_wrong_label_ends_with_1(typed: Type) -> None:
    """Percentages that do not make 100 are an error."""
    done = typed("label", "-", stdin=YARNS.replace("75", "70"))
    assert (done.status, "fibre-shares-not-whole" in done.out) == (1, True)
    assert "not known" in done.out


def test_what_does_not_fit_is_said_with_its_place(typed: Type) -> None:
    """Never a traceback."""
    done = typed("label", "-", stdin=YARNS.replace("grams", "gram"))
    assert done.status == 2
    assert "/yarns/0/gram" in done.err and "this is not a list of yarns" in done.err


def test_marks_that_would_move_the_screen_are_shown_as_pictures(typed: Type) -> None:
    """A name is data and no command to the terminal."""
    text = json.dumps({"yarns": [{"name": "a\u009b31m", "fibre": []}]})
    assert typed("label", "-", stdin=text).status == 2
