"""`counterpane plan` and `write`: the same answers as the API, statuses, and refusals with the next step."""

from __future__ import annotations

import json
import re
from decimal import Decimal
from pathlib import Path
from typing import Any

import pytest

from cli.conftest import Type
from counterpane.cli import output
from counterpane.cli.commands import plan as plan_command
from counterpane.craft.component import content_of
from counterpane.library.parts import components
from counterpane.library.patterns import designing, pages
from counterpane.library.plans import planning
from counterpane.library.services import Services
from counterpane.seeding import load_component
from counterpane.wiring import open_library

REQUEST: dict[str, Any] = {
    "parts": {"body": "waffle", "selvedge": "slipped-selvedge"},
    "gauge": {"stitches": 22, "rows": 30, "over_cm": 10, "in": "waffle"},
    "size": {"width_cm": 70, "length_cm": 90},
}
MISFIT = REQUEST | {"parts": {"body": "basket-weave", "bottom": {"component": "garter-rib-border", "rows": 12}}}


def changed(**members: Any) -> str:
    """Return the request with other members, as JSON."""
    return json.dumps(REQUEST | members)


@pytest.fixture(scope="module")
def library() -> Services:
    """Return a library with the starters."""
    return open_library()


def test_the_json_of_a_plan_is_what_the_api_answers(typed: Type, library: Services):
    """Both say the same of the same request."""
    done = typed("plan", "-", "--json", stdin=json.dumps(REQUEST))
    assert done.status == 0
    assert json.loads(done.out) == json.loads(json.dumps(planning.plan(library, REQUEST)))


def test_the_json_of_a_pattern_is_what_the_api_answers(typed: Type, library: Services):
    """Both say the same of the same request, the yarn and the sampler too."""
    request = REQUEST | {"yarn": {"name": "an invented wool", "weight": "aran"}}
    done = typed("write", "-", "--as", "json", "--terms", "uk", stdin=json.dumps(request))
    answer = pages.pattern(library, request | {"terms": "uk"}, "json")
    assert json.loads(done.out) == json.loads(output.as_json(answer))
    assert "an invented wool, aran" in answer["text"]


def test_the_designers_sheet_is_what_the_api_answers(typed: Type, library: Services):
    """Both say the same of the same request, in the units asked for."""
    done = typed("write", "-", "--as", "json", "--sheet", "designer", "--units", "in", stdin=json.dumps(REQUEST))
    answer = designing.sheet_json(library, REQUEST | {"units": "in"})
    assert json.loads(done.out) == json.loads(output.as_json(answer))
    assert answer["text"].startswith("Blanket in waffle: the designer's sheet\n")


def test_a_person_reads_the_cast_on_and_its_sum(typed: Type):
    """The counts of the contract's example stand in a sentence and a sum."""
    done = typed("plan", "-", stdin=json.dumps(REQUEST))
    assert "Cast on 153 stitches" in done.out
    assert "1 selvedge + 6 border + 139 body (46 repeats) + 6 border + 1 selvedge" in done.out


def test_a_person_reads_what_is_picked_up_and_checks_the_pattern(typed: Type):
    """The plan says it for each edge, the pattern as an order, and the pattern goes back through check."""
    request = changed(construction="sides-picked-up", parts={"body": "waffle"})
    assert "along the left edge, from the bind-off on" in typed("plan", "-", stdin=request).out
    text = typed("write", "-", "--as", "text", stdin=request).out
    assert "pick up and knit" in text
    assert typed("check", "-", "--json", stdin=text).status == 0


def test_sides_that_cannot_be_picked_up_are_refused_with_a_correction(typed: Type):
    """A left side of its own belongs to borders that are worked with the body."""
    sides = {"text": "Row 1: knit.", "left": "Row 1: knit.", "rows": 8}
    request = changed(construction="sides-picked-up", parts={"body": "waffle", "sides": sides})
    done = typed("plan", "-", "--json", stdin=request)
    assert done.status == 1
    assert json.loads(done.out)["findings"][0]["pointer"] == "/parts/sides/left"


def test_parts_that_share_no_count_end_with_1_and_a_problem_document(typed: Type):
    """The document is that of the API, with findings and corrections."""
    done = typed("plan", "-", "--json", stdin=json.dumps(MISFIT))
    problem = json.loads(done.out)
    assert (done.status, problem["status"]) == (1, 422)
    assert problem["findings"]
    assert {"pointer": "/parts/sides/stitches", "value": 7}.items() <= problem["corrections"][0].items()


@pytest.mark.parametrize(
    ("text", "said"),
    [
        (changed(guage=1), "/guage: There is no such member here. Probably meant: gauge."),
        (changed(size={"witdh_cm": 70, "length_cm": 90}), "Probably meant: width_cm."),
        (changed(size={"width_cm": 0, "length_cm": 90}), "/size/width_cm"),
        (changed(size={"width_cm": -5, "length_cm": 90}), "/size/width_cm"),
        (changed(size={"width_cm": "wide", "length_cm": 90}), "/size/width_cm"),
        (changed(gauge={"stitches": 0, "rows": 30, "over_cm": 10}), "/gauge/stitches"),
        (changed(parts={}), "/parts/body"),
        ("size = = 3", "line 1, column 8: not TOML"),
        ("{}", "/parts"),
    ],
)
def test_a_request_that_does_not_fit_ends_with_2_and_the_place(typed: Type, text: str, said: str):
    """The pointer and the nearest name are in the message, and nothing is on standard output."""
    done = typed("plan", "-", stdin=text)
    assert (done.status, done.out) == (2, "")
    assert said in done.err


def test_an_unknown_component_ends_with_3_and_the_nearest(typed: Type):
    """The place of the slug is in the message."""
    done = typed("plan", "-", stdin=changed(parts={"body": "wafle"}))
    assert (done.status, done.out) == (3, "")
    assert "/parts/body: " in done.err
    assert "waffle" in done.err


def test_a_pin_to_another_revision_ends_with_3(typed: Type):
    """A recipe pinned to a revision that is not here is not worked out with another."""
    part = {"component": "waffle", "revision": "0" * 64}
    assert typed("plan", "-", stdin=changed(parts={"body": part})).status == 3


@pytest.mark.parametrize("width", [10**16, 10**17, 10**18 - 1])
def test_a_width_that_nobody_knits_gets_an_answer(typed: Type, width: int):
    """Sizes of any magnitude are answered at once."""
    done = typed("plan", "-", stdin=changed(size={"width_cm": width, "length_cm": 90}))
    assert done.status in (0, 1, 2)
    assert "a fault in Counterpane" not in done.err


@pytest.mark.parametrize(
    ("stitches", "over", "said"),
    [
        (10**16, 10, "Write the stitches that were counted on the swatch: above 0, and not more than 1,000,000."),
        (0, 10, "Write the stitches that were counted on the swatch: above 0, and not more than 1,000,000."),
        (999_999, 0.5, "No yarn is knitted so: stitches are taken from 1 in 1,000,000 cm to 1,000,000 in 1 cm."),
    ],
)
def test_a_gauge_that_nobody_knits_is_told_the_most_that_is_taken(typed: Type, stitches: int, over: float, said: str):
    """In words of the craft, at the place of the count."""
    done = typed("plan", "-", stdin=changed(gauge={"stitches": stitches, "rows": 30, "over_cm": over}))
    assert done.status == 2
    assert f"/gauge/stitches: {said}" in done.err


def test_numbers_are_read_by_their_decimal_text(typed: Type):
    """135 stitches at 22.5 stitches to 10 cm measure 60 cm (common practice, no source)."""
    plain = {"component": "garter-border", "stitches": 6}
    parts = {"body": "garter", "sides": plain}
    done = typed("plan", "-", "--json", stdin=changed(parts=parts, gauge=_gauge("22.5"), size=_size("60.0")))
    assert json.loads(done.out)["counts"]["cast_on"] == 135


def _gauge(stitches: str) -> dict[str, Any]:
    return {"stitches": float(Decimal(stitches)), "rows": 42, "over_cm": 10, "in": "garter"}


def _size(width: str) -> dict[str, Any]:
    return {"width_cm": float(Decimal(width)), "length_cm": 90}


@pytest.mark.parametrize(("form", "first"), [("text", "Blanket in waffle"), ("markdown", "# Blanket in waffle")])
def test_a_pattern_begins_with_its_title(typed: Type, form: str, first: str):
    """A request without a name has one made of its texture."""
    done = typed("write", "-", "--as", form, stdin=json.dumps(REQUEST))
    assert (done.status, done.err) == (0, "")
    assert done.out.splitlines()[0] == first


def test_a_pattern_goes_into_a_file_whole(typed: Type, tmp_path: Path):
    """Standard output stays empty, and what is in the file is what would have been on it."""
    shown = typed("write", "-", "--as", "text", stdin=json.dumps(REQUEST)).out
    done = typed("write", "-", "--as", "text", "--out", "made/it.txt", stdin=json.dumps(REQUEST))
    assert (done.status, done.out) == (0, "")
    assert (tmp_path / "made" / "it.txt").read_text("utf-8") == shown
    assert sorted(path.name for path in (tmp_path / "made").iterdir()) == ["it.txt"]


@pytest.mark.parametrize("form", ["doc", "PDF", ""])
def test_a_form_that_is_not_there_ends_with_2_and_those_that_are(typed: Type, form: str):
    """Nothing is read or written."""
    done = typed("write", "nowhere.toml", "--as", form)
    assert (done.status, done.out) == (2, "")
    assert "Forms are text, markdown, html, pdf, json." in done.err


def test_a_person_reads_how_the_fabric_behaves_with_what_it_rests_on(typed: Type):
    """Parts of one texture stand together, and each figure has its basis behind it."""
    done = typed("plan", "-", stdin=changed(parts={"body": "stocking-stitch"}))
    words = " ".join(done.out.split())
    assert "bottom, sides and top (garter-border): lies flat" in words
    assert "1.05 to 1.1 times as wide as stocking stitch (house figure)" in words
    assert "rolls to the back at its sides" in words


def test_a_person_reads_the_mass_per_area_of_a_yarn_that_is_known(typed: Type):
    """Grams to the square metre stand as a range, and what is not known says so."""
    yarn = {"name": "an invented wool", "metres_per_100g": 230}
    done = typed("plan", "-", stdin=changed(yarn=yarn))
    words = " ".join(done.out.split())
    assert "g per m² (borrowed)" in words
    assert "grams per m² not known: no gauge of its own; weigh a swatch" in words


def test_a_page_goes_whole_to_standard_output(typed: Type):
    """With nothing before it and nothing on the other stream."""
    done = typed("write", "-", "--as", "html", stdin=json.dumps(REQUEST))
    assert (done.status, done.err) == (0, "")
    assert done.out.startswith("<!doctype html>") and done.out.endswith("</html>\n")


def test_a_pdf_goes_to_a_file(typed: Type, tmp_path: Path):
    """For the paper that was asked for."""
    done = typed("write", "-", "--as", "pdf", "--paper", "letter", "--out", "it.pdf", stdin=json.dumps(REQUEST))
    assert (done.status, done.out, done.err) == (0, "", "wrote it.pdf\n")
    assert (tmp_path / "it.pdf").read_bytes().startswith(b"%PDF-")


def test_a_plan_without_a_gauge_says_what_a_gauge_holds(typed: Type):
    """It is missing, and the members that it may hold are named."""
    done = typed("plan", "-", stdin='[parts]\nbody = "waffle"\n[size]\nwidth_cm = 75\nlength_cm = 90\n')
    assert done.status == 2
    assert "/gauge: This is missing, and is needed. It may hold:" in done.err and "over_in" in done.err


def test_a_part_that_nothing_is_near_leads_to_the_list(typed: Type):
    """A guess of a name should not be the end of the way."""
    text = '[parts]\nbody = "zzzzz"\n[gauge]\nstitches = 21\nrows = 28\nover_cm = 10\n[size]\nnamed = "pram"\n'
    done = typed("plan", "-", stdin=text)
    assert (done.status, "`counterpane find` lists" in done.err) == (3, True)


def test_the_request_in_the_help_is_a_plan(typed: Type):
    """Without its remarks it can be typed as it stands."""
    example = plan_command.ABOUT[plan_command.ABOUT.index("  [parts]") :]
    text = "\n".join(re.split(r"\s{4,}", line.strip())[0] for line in example.splitlines())
    assert typed("plan", "-", stdin=text).status == 0


def test_millimetres_are_not_taken_for_centimetres(typed: Type):
    """A size that is only renamed would be ten times too large."""
    text = '[parts]\nbody = "waffle"\n[gauge]\nstitches = 21\nrows = 28\nover_cm = 10\n'
    done = typed("plan", "-", stdin=text + "[size]\nwidth_mm = 750\nlength_cm = 90\n")
    assert (done.status, "width_cm, in centimetres: 750 mm are 75." in done.err) == (2, True)


def test_a_licence_that_a_part_does_not_allow_is_told_as_the_api_tells_it(typed: Type, tmp_path: Path):
    """Under --json the problem document is on standard output; the status is that of a refusal either way."""
    services = open_library(tmp_path / "lib.db")
    content = content_of(load_component("waffle"))
    shared = {"provenance": content["provenance"] | {"licence": "CC-BY-SA-4.0"}}
    components.add(services, content | {"slug": "shared-waffle"} | shared, "Bram")
    services.store.close()
    request = changed(parts={"body": "shared-waffle"}, gauge=REQUEST["gauge"] | {"in": None}, licence="CC0-1.0")
    done = typed("plan", "-", "--json", "--store", "lib.db", stdin=request)
    assert (done.status, json.loads(done.out)["type"]) == (4, "/problems/licence-refuses")
    plain = typed("plan", "-", "--store", "lib.db", stdin=request)
    assert (plain.status, plain.out, "Waffle" in plain.err) == (4, "", True)
