"""A recipe in several sizes: each the plan of its own, and one text in which every size is found clean again."""

from __future__ import annotations

import re
from typing import Any

import pytest

from counterpane.craft.constructions import CannotBePlanned
from counterpane.library.patterns import pages
from counterpane.library.plans.bench import bench_of
from counterpane.library.plans.grading import plan_grade
from counterpane.library.services import Services
from counterpane.library.texts.checks import check_text
from counterpane.library.texts.extracts import extract_text
from counterpane.library.values import BadInput
from counterpane.press.graded import as_graded_markdown, as_graded_text
from counterpane.seeding import load_components
from counterpane.wiring import open_library

BASE: dict[str, Any] = {"parts": {"body": "waffle"}, "gauge": {"stitches": 22, "rows": 30, "over_cm": 10}}
SIZES = [{"named": "preemie"}, {"named": "pram"}, {"name": "large", "width_cm": 100, "length_cm": 140}]
BODIES = tuple(component.slug for component in load_components() if component.kind == "body")


@pytest.fixture(scope="module")
def library() -> Services:
    """Return a library with the starters."""
    return open_library()


def graded(library: Services, **changes: Any) -> dict[str, Any]:
    """Return the base request in the three sizes."""
    content = BASE | {"sizes": SIZES} | changes
    return plan_grade(content, bench_of(library, content), as_graded_text)


def rows_of(checked: dict[str, Any]) -> list[tuple[Any, ...]]:
    """Return what a check read of each row."""
    return [(row["label"], row["side"], row["before"], row["after"]) for row in checked["rows"]]


@pytest.mark.parametrize("body", BODIES)
@pytest.mark.parametrize("borders", ["same", "in-proportion"])
def test_every_size_of_the_text_is_that_sizes_own_pattern(library: Services, body: str, borders: str) -> None:
    """Read in brackets, and taken out as a text of one size, the rows are those of the size planned alone."""
    try:
        answer = graded(library, parts={"body": body}, borders=borders)
    except BadInput as refused:
        assert "worked otherwise" in str(refused)
        return
    checked = check_text(answer["text"], library.vocabulary, terms="us")["sizes"]
    for number, (size, read) in enumerate(zip(answer["sizes"], checked, strict=True), 1):
        assert [each for each in read["findings"] if not each["rule"].startswith("abbreviation-")] == []
        alone = {
            **BASE,
            "parts": size["recipe"]["parts"],
            "size": {"width_cm": size["finished"]["width_cm"], "length_cm": size["finished"]["length_cm"]},
        }
        text = pages.pattern(library, alone, "text")["text"]
        single = check_text(text, library.vocabulary, terms="us")
        taken = check_text(extract_text(answer["text"], number)["text"], library.vocabulary, terms="us")
        assert read["cast_on"] == taken["cast_on"] == single["cast_on"] == size["counts"]["cast_on"]
        assert rows_of(read) == rows_of(taken) == rows_of(single)


def test_the_counts_stand_in_brackets(library: Services) -> None:
    """The first size before them, the others in them, and the names of the sizes at the top."""
    answer = graded(library)
    counts = [size["counts"]["cast_on"] for size in answer["sizes"]]
    assert f"Cast on {counts[0]} ({counts[1]}, {counts[2]}) sts." in answer["text"]
    assert "Sizes: preemie (pram, large)" in answer["text"].splitlines()
    assert answer["names"] == ["preemie", "pram", "large"]


def test_the_data_say_of_every_row_what_the_text_says(library: Services) -> None:
    """Row by row, the text and the counts of each size are those that a check of the text finds."""
    answer = graded(library)
    rows = [row for section in answer["pattern"]["sections"] for row in section["rows"]]
    for place, size in enumerate(check_text(answer["text"], library.vocabulary, terms="us")["sizes"]):
        assert [(row["label"], row["side"][place], row["after"][place]) for row in rows] == [
            (row["label"], row["side"], row["after"]) for row in size["rows"]
        ]
    lines = " ".join(answer["text"].split())
    assert all(" ".join(row["text"].split()) in lines for row in rows)


def test_rows_and_repeats_make_up_each_section_in_every_size(library: Services) -> None:
    """The rows that are written and those that are repeated are all that are worked; sections follow each other."""
    answer = graded(library, parts={"body": "basket-weave"})
    for place, size in enumerate(answer["sizes"]):
        sections, at = answer["pattern"]["sections"], 0
        for section in sections:
            again = sum((each["last"] - each["first"] + 1) * each["times"] for each in section["repeats"][place])
            assert section["worked"][place] == len(section["rows"]) + again
            assert section["first_row"][place] == at + 1
            at = section["last_row"][place]
        assert at == size["finished"]["rows"]


def test_the_range_can_be_laid_out_as_markdown(library: Services) -> None:
    """The text that is read back is still the plain one, and both say the same counts."""
    content = BASE | {"sizes": SIZES}
    shown = plan_grade(content, bench_of(library, content), as_graded_text, as_graded_markdown)["text"]
    counts = [size["counts"]["cast_on"] for size in graded(library)["sizes"]]
    assert shown.startswith("# ") and "### Sizes: preemie (pram, large)" in shown
    assert f"Cast on {counts[0]} ({counts[1]}, {counts[2]}) sts." in shown


def test_what_only_some_sizes_say_names_them(library: Services) -> None:
    """A repeat that only one size stops in the middle of is said for that size alone."""
    sizes = [{"name": "short", "width_cm": 60, "length_cm": 60}, {"name": "long", "width_cm": 60, "length_cm": 66}]
    text = graded(library, parts={"body": "basket-weave"}, sizes=sizes)["text"]
    assert re.search(r"^(Short|Long) only: Then work rows 1–6 once more\.$", text, re.MULTILINE)


def test_borders_in_proportion_keep_their_share(library: Services) -> None:
    """Within a percent of the sample, where the same borders lose half of theirs."""
    kept = [size["borders_percent"]["across"] for size in graded(library, borders="in-proportion", sample=2)["sizes"]]
    same = [size["borders_percent"]["across"] for size in graded(library)["sizes"]]
    assert max(kept) - min(kept) < 1
    assert max(same) > 1.9 * min(same)


def test_a_size_that_cannot_be_planned_is_named(library: Services) -> None:
    """The finding says which."""
    with pytest.raises(CannotBePlanned, match="In size tiny: "):
        graded(library, sizes=[SIZES[0], {"name": "tiny", "width_cm": 3, "length_cm": 3}])


@pytest.mark.parametrize("size", SIZES)
def test_a_range_of_one_size_is_that_size(library: Services, size: dict[str, Any]) -> None:
    """Its plan is that of the size among others, and its text, which has no brackets, reads back by itself."""
    (alone,) = graded(library, sizes=[size])["sizes"]
    among = next(each for each in graded(library)["sizes"] if each["name"] == alone["name"])
    assert (alone["counts"], alone["finished"]) == (among["counts"], among["finished"])
    text = graded(library, sizes=[size])["text"]
    checked = check_text(text, library.vocabulary, terms="us")
    assert (checked["sizes"], checked["cast_on"]) == (None, alone["counts"]["cast_on"])
    assert f"Size: {alone['name']}" in text


@pytest.mark.parametrize(
    ("changes", "pointer"),
    [
        ({"sizes": [{"named": "pram"}, {"named": "pramm"}]}, "/sizes/1/named"),
        ({"sizes": [{"named": "pram"}, {"named": "pram"}]}, "/sizes/1/name"),
        ({"sizes": [{"named": "pram"}, {"named": "cot", "name": "only"}]}, "/sizes/1/name"),
        ({"sizes": [{"named": "pram"}, {"width_cm": 0, "length_cm": 9}]}, "/sizes/1/width_cm"),
        ({"sample": 4}, "/sample"),
    ],
)
def test_what_is_no_range_of_sizes_is_refused(library: Services, changes: dict[str, Any], pointer: str) -> None:
    """Each with its place."""
    with pytest.raises(BadInput) as refused:
        graded(library, **changes)
    assert refused.value.pointer == pointer
