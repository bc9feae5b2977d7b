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


def test_parts_and_what_is_left_out_are_told(typed: Type) -> None:
    """320 g of 374 is 85.6 %, 8 g is 2.1 %: by hand."""
    text = YARNS.replace('"body"', '"body"\npart = "body"').replace('"edge"', '"edge"\npart = "border"')
    trim = '[[yarns]]\ngrams = 8\nleft_out = "decoration"\nfibre = [{ fibre = "silk", percent = 100 }]\n'
    done = typed("label", "-", stdin=text + trim + '[stated]\nmaker = "A. Maker"\n')
    assert "Fibres of the body, 85.6 % of the piece" in done.out
    assert "Without decoration, 2.1 % of the piece." in done.out
    assert "Maker: A. Maker" in done.out
    assert "by 3 % of the mass" in done.out


def test_a_care_that_is_told_in_part_is_not_printed_as_a_label(typed: Type) -> None:
    """What every yarn tells is shown, and what one leaves out is said to be not known."""
    whole = (
        'care = {{ washing = "{}", bleaching = "none", tumble_drying = "none", ironing = "150", dry_cleaning = "P" }}\n'
    )
    both = YARNS.replace('name = "body"\n', f'name = "body"\nsuperwash = true\n{whole.format("machine 40")}')
    done = typed("label", "-", stdin=both + whole.format("hand 30").replace('ironing = "150", ', ""))
    assert "Ironing: not known, untold of edge." in done.out
    assert done.out.count("Hand wash only, at 30 °C at most") == 2, "among what every yarn bears, and in the note"
    done = typed("label", "-", stdin=both + whole.format("hand 30"))
    assert done.out.count("Hand wash only, at 30 °C at most") == 4, "on both labels as well"


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


def test_a_plan_tells_of_its_fibres_and_its_care(typed: Type) -> None:
    """Beside the counts, from the yarn of its request."""
    yarn = {"fibre": [{"fibre": "merino", "percent": 100}], "superwash": True, "care": {"washing": "machine 40"}}
    request = {
        "parts": {"body": "waffle"},
        "gauge": {"stitches": 22, "rows": 30, "over_cm": 10},
        "size": {"width_cm": 70, "length_cm": 90},
    }
    done = typed("plan", "-", stdin=json.dumps({**request, "yarn": yarn}))
    assert "100 % (100.00) wool" in done.out
    assert "Machine wash at 40 °C at most, normal process." in done.out
    assert "Bleaching is not known" in done.out
    assert "Also not known" not in done.out


def test_a_printed_example_of_the_regulation(typed: Type) -> None:
    """V4, Regulation (EU) No 1007/2011, Annex VIII, chapter 3, section IV, variant 4: 48.6, 40.8 and 10.6 %."""
    analysed = [("wool", 10.27, "carded"), ("viscose", 48.71, "any"), ("cotton", 41.02, "unbleached")]
    fibre = [{"fibre": name, "percent": percent, "state": state} for name, percent, state in analysed]
    request = {"mass": "dry", "places": 1, "markets": ["EU"], "yarns": [{"fibre": fibre}]}
    done = typed("label", "-", stdin=json.dumps(request))
    assert "48.6 % viscose, 40.8 % cotton, 10.6 % wool" in done.out
    assert "48.6 % (48.62) viscose" in done.out and "40.8 % (40.77) cotton" in done.out


def test_a_plan_request_is_told_where_its_label_is(typed: Type) -> None:
    """It says what was given, which command tells its label, and which shape this one wants."""
    done = typed("label", "-", stdin='[parts]\nbody = "waffle"\n[gauge]\nstitches = 22\n')
    assert (done.status, done.out) == (2, "")
    assert "this is a plan request" in done.err
    assert "counterpane plan FILE" in done.err and "[[yarns]]" in done.err and "markets" not in done.err
