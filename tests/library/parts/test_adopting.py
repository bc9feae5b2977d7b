"""Adopting a component from its words: what follows is filled in, the rest is asked for, nothing is made up."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import replace

import pytest

from counterpane.craft.component import Component, Version, component_of, content_of, derive, prove
from counterpane.craft.component.adoption import disagreements
from counterpane.craft.rows.instructions import read_text
from counterpane.craft.rows.say import say_line
from counterpane.craft.stitches import Vocabulary
from counterpane.library.errors import Refused
from counterpane.library.parts.adopting import Adoption, adopt, slug_of
from counterpane.seeding import load_component, load_components

EYELETS = """Pea eyelets
(multiple of 4 sts plus 1)
Cast on 41 sts.
Row 1: K1, *yo, k2tog, k2; rep from * to end.
Row 2: Purl.
"""
WHO = {"kind": "body", "licence": "CC0-1.0", "author": "anna", "source": "common-practice"}
BODIES = [each.slug for each in load_components() if each.kind == "body" and len(each.versions) == 1]


def asked(adoption: Adoption) -> list[str]:
    """Return the pointers of the questions that are open."""
    return [question.pointer for question in adoption.questions]


def refused(text: str, vocabulary: Vocabulary, **answers: object) -> list[tuple[str, int | None, int | None]]:
    """Return the rules of the findings with their places, for which a text is refused."""
    with pytest.raises(Refused) as fault:
        adopt(text, {**WHO, **answers}, vocabulary)
    return [(finding.rule, finding.line, finding.column) for finding in fault.value.findings]


def test_what_follows_from_the_rows_is_filled_in(vocabulary: Vocabulary) -> None:
    """Name from the title, counts, sides, openings, and examples at the least count and at the cast-on."""
    adoption = adopt(EYELETS, WHO, vocabulary)
    content, version = adoption.content, adoption.derived["versions"][0]

    assert asked(adoption) == []
    assert (content["slug"], content["name"]) == ("pea-eyelets", "Pea eyelets")
    assert adoption.derived["multiple"] == {"of": 4, "plus": 1, "least": 5}
    assert (version["row_repeat"], version["first_side"], version["last_side"]) == (2, "RS", "WS")
    assert content["safety"]["openings"] == {"value": "1", "unit": "yarn-over"}
    assert content["examples"] == [
        {"stitches": 5, "after": [5, 5], "version": 0},
        {"stitches": 41, "after": [41, 41], "version": 0},
    ]


def test_the_faces_and_the_abbreviations_are_derived(vocabulary: Vocabulary) -> None:
    """Nine knit faces and one opening over five stitches; the rows need these short words and no others."""
    derived = adopt(EYELETS, WHO, vocabulary).derived

    assert derived["faces"] == {"knit": 9, "open": 1}
    assert {each["name"] for each in derived["abbreviations"]} == {"*", "k", "k2tog", "rep", "RS", "WS", "yo"}


def test_what_does_not_follow_is_asked_for_and_not_made_up(vocabulary: Vocabulary) -> None:
    """Rows alone tell no kind, name, licence, author or source."""
    adoption = adopt("Row 1: *K2, p2; rep from * to end.\n", {}, vocabulary)

    assert asked(adoption) == ["/kind", "/name", "/licence", "/author", "/source"]
    assert adoption.content["kind"] is None
    assert not any(adoption.content["provenance"].values())


def test_a_border_is_asked_for_its_corner(vocabulary: Vocabulary) -> None:
    """It takes whole row repeats and the counts of its rows; the corner is for eyes."""
    adoption = adopt(EYELETS, WHO | {"kind": "border"}, vocabulary)

    assert asked(adoption) == ["/across_corner"]
    assert [(each["name"], each["least"], each["step"]) for each in adoption.content["parameters"]] == [
        ("rows", 2, 2),
        ("stitches", 5, 4),
    ]


def test_a_selvedge_tells_its_slipped_edge_or_is_asked(vocabulary: Vocabulary) -> None:
    """A manner that is printed in every row is taken from there."""
    told = "Edge\nRow 1: Sl 1 pwise wyif, knit to end.\nRow 2: Sl 1 pwise wyif, knit to end.\n"
    adoption = adopt(told, WHO | {"kind": "selvedge"}, vocabulary)
    untold = adopt(told.replace(" pwise wyif", ""), WHO | {"kind": "selvedge"}, vocabulary)

    assert adoption.content["slipped_edge"] == {"manner": "pwise", "yarn": "front"}
    assert asked(untold) == ["/slipped_edge"]


def test_one_count_alone_is_shown_over_one_pass_and_two(vocabulary: Vocabulary) -> None:
    """An edging of one count has no wider example."""
    edging = (
        "Row 1: Sl 1, k2, yo, k2tog, yo twice, k2tog.\nRow 2: K2, p1, k2, yo, k2tog, k1.\nRow 3: Bind off 1 st, k6."
    )
    examples = adopt(edging, WHO | {"name": "Points"}, vocabulary).content["examples"]

    assert [(each["stitches"], each["after"]) for each in examples] == [(7, [8, 8, 7]), (7, [8, 8, 7, 8, 8, 7])]


@pytest.mark.parametrize(
    ("text", "finding"),
    [
        (EYELETS.replace("plus 1", "plus 2").replace("Cast on 41 sts.\n", ""), ("stated-multiple-wrong", 2, 2)),
        (EYELETS.replace("41 sts", "40 sts"), ("repeat-does-not-fit", 4, 12)),
        (EYELETS.replace("k2tog", "k2tgo"), ("unknown-term", 4, 17)),
        ("Row 1: Knit.\nRow 2: K2tog, knit to end.\n", ("count-drifts", 2, 1)),
        (f"{EYELETS}Cast on 9 sts.\nRow 1: Knit.\n", ("does-not-prove", 6, 9)),
        (f"{EYELETS}Row 3: Knit.\nRow 4: Purl.\nRep rows 3-4.\n", ("does-not-prove", 8, 1)),
        ("Cast on 20 (24) sts.\nRow 1: K5 (7), p to end.\nRow 2: Knit.\n", ("does-not-prove", 2, 1)),
        ("", ("no-rows", 1, 1)),
    ],
)
def test_a_text_that_does_not_hold_is_refused_at_its_place(
    text: str, finding: tuple[str, int, int], vocabulary: Vocabulary
) -> None:
    """The same rules as for a check, and what a component cannot be, each with line and column."""
    assert finding in refused(text, vocabulary)


def test_a_side_that_nobody_states_is_said(vocabulary: Vocabulary) -> None:
    """Row 1 counts as a RS row; where that shows mostly purl, the other reading is named."""
    notes = adopt("Row 1: Purl.\nRow 2: *K2tog, yo; rep from * to end.\n", WHO | {"name": "Net"}, vocabulary).notes

    assert notes[0] == "No row says its side: row 1 is taken as a RS row."
    assert "more purl than knit" in notes[1]


def test_uk_words_are_kept_in_us_terms(vocabulary: Vocabulary) -> None:
    """The rows of a component read the same whoever reads them."""
    adoption = adopt("Row 1: *K1, yfwd, k2tog; rep from * to end.\n", WHO | {"name": "Net", "terms": "uk"}, vocabulary)

    assert adoption.content["versions"][0]["rows"] == "Row 1 (RS): *k1, yo, k2tog; rep from * to end.\n"


def test_a_name_becomes_a_slug() -> None:
    """Letters without their accents, digits, and single hyphens."""
    assert slug_of("Piqué pattern, fig. 376: Nun's") == "pique-pattern-fig-376-nuns"
    assert slug_of("編み物") == ""


@pytest.mark.parametrize("slug", BODIES)
def test_the_rows_of_a_starter_said_again_are_adopted_as_they_are(
    slug: str, starters: Mapping[str, Component], vocabulary: Vocabulary
) -> None:
    """Saying, reading and adopting again changes nothing: the same rows, counts, sides and openings."""
    starter = starters[slug]
    (version,) = derive(starter, vocabulary).versions
    lines = [say_line(row, vocabulary, label=str(number)) for number, row in enumerate(version.rows, 1)]
    adoption = adopt("\n".join(lines), WHO | {"name": starter.name}, vocabulary)
    once = component_of(adoption.content)
    again = component_of(adopt(once.versions[0].rows, WHO | {"name": starter.name}, vocabulary).content)
    (derived,) = derive(once, vocabulary).versions

    assert again == once
    assert [row.parts for row in derived.rows] == [row.parts for row in version.rows]
    assert (derived.chain, derived.layout) == (version.chain, version.layout)
    assert once.safety.openings == starter.safety.openings


def test_whatever_is_adopted_proves(vocabulary: Vocabulary) -> None:
    """The gate of the library takes it, and its content reads as itself."""
    component = component_of(adopt(EYELETS, WHO, vocabulary).content)

    assert prove(component, vocabulary) == ()
    assert component_of(content_of(component)) == component


def test_a_multiple_that_stands_with_stored_rows_is_judged(
    starters: Mapping[str, Component], vocabulary: Vocabulary
) -> None:
    """A component whose own rows promise another multiple does not prove."""
    waffle = starters["waffle"]
    version = replace(waffle.versions[0], rows=f"(multiple of 4 sts)\n{waffle.versions[0].rows}")
    (problem,) = prove(replace(waffle, versions=(version,)), vocabulary)

    assert (problem.rule, problem.place and problem.place.line) == ("stated-multiple-wrong", 1)


@pytest.mark.parametrize(
    ("text", "line", "message"),
    [
        ("Rows 1-1001: K.\nRows 1002-2002: P.", 2, "These are 2002 rows, and a component has at most 2000."),
        ("Border\nRow 1: K.\nBody\nRow 1: P.", 4, "Another section begins here, and a component is one."),
        ("Row 1: *K3000; rep from * to end.", None, "No worked example of these rows can be proved."),
    ],
)
def test_what_is_no_one_component_is_refused_with_its_place(
    text: str, line: int | None, message: str, vocabulary: Vocabulary
) -> None:
    """Too many rows, two sections, and rows so wide that no example of them is worked loop by loop."""
    with pytest.raises(Refused) as fault:
        adopt(text, WHO, vocabulary)
    assert [(finding.line, finding.message) for finding in fault.value.findings] == [(line, message)]


def test_rows_that_are_turned_before_their_end_are_no_texture(vocabulary: Vocabulary) -> None:
    """Of short rows nobody knows whether both sides look alike, since they are no repeat of one cell."""
    adoption = adopt("Row 1: K to last 2 sts, turn.\nRow 2: P.", WHO, vocabulary)
    assert adoption.content.get("reversible") is None


def test_a_texture_of_few_counts_is_named_by_each(vocabulary: Vocabulary) -> None:
    """A repeat that passes over more than it works uses up the stitches before it: three counts are left."""
    repeat = "*k1, psso, psso; rep from * to end."
    text = f"Row 1: K8, {repeat}\nRow 2: K4, {repeat}\nRow 3: Cast on 8 sts, k to end.\nRow 4: Knit.\n"
    adoption = adopt(text, {**WHO, "name": "Passed over"}, vocabulary)
    assert [each["least"] for each in adoption.derived["classes"]] == [9, 10, 11]
    assert adoption.content["versions"][0]["name"] == "9 stitches or 10 stitches or 11 stitches"


@pytest.mark.parametrize(("rows", "line"), [("Row 1: K1, p1.\nRow 2: K2.\n", 2), ("Row 1: K1, p1.\n", None)])
def test_words_that_read_otherwise_than_the_rows_are_no_component(
    rows: str, line: int | None, vocabulary: Vocabulary
) -> None:
    """The rows said again must be the rows: the first that differs is named, or that there are more or fewer."""
    read = read_text("Row 1: K1, p1.\nRow 2: P1, k1.\n", vocabulary).rows
    other = replace(load_component("garter"), versions=(Version("any count", rows),))
    (problem,) = disagreements(other, read, vocabulary)
    assert "cannot be said again" in problem.message
    assert (problem.place.line if problem.place else None) == line
