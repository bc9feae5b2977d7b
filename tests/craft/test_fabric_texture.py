"""The endless texture of rows: laid out loop by loop, and by a second road from the stitches of each row."""

from __future__ import annotations

from collections.abc import Mapping

import pytest
from hypothesis import given
from hypothesis import strategies as st

from counterpane.craft.component import Component, canonical_textures, derive, may_share, textures
from counterpane.craft.component.derived import sides_of
from counterpane.craft.component.strands import most_opened, most_slipped
from counterpane.craft.component.worked import NotPlain, from_right
from counterpane.craft.fabric import Texture, showing, texture_of
from counterpane.craft.stitches import Vocabulary
from counterpane.craft.texture import PLAIN, Cell, canonical, images, straight

from .handmade import rows_of
from .texture.cells import KNIT_AND_PURL, repeated, shifted
from .textures import body


def laid_out(text: str, vocabulary: Vocabulary) -> Texture:
    """Return the texture of the rows between the slashes."""
    found = texture_of(rows_of(text, vocabulary), vocabulary)
    assert found is not None
    return found


@pytest.mark.parametrize(
    ("text", "cell"),
    [
        ("knit", (("k",), ("p",))),
        ("knit / purl / knit / purl", (("k",),)),
        ("k2, *p3, k1; rep from * to last 2 sts, k2 / purl", (("p", "k", "p", "p"), ("k", "k", "k", "k"))),
        ("*k tbl, p1; rep from * to end / *k1, p tbl; rep from * to end", (("k tbl", "p"),)),
        ("*sl 1 wyif, k1; rep from * to end / purl", (("sl, yarn in front", "k"), ("k", "k"))),
        ("*k1, yarn to front, sl 1, yarn to back; rep from * to end / purl", None),
    ],
)
def test_the_cell_is_the_smallest_upright_one_as_the_right_side_shows_it(
    text: str, cell: Cell | None, vocabulary: Vocabulary
) -> None:
    """Edges are left out, an odd repeat is seen from either side, and the yarn lies where it was said to."""
    found = laid_out(text, vocabulary).cell
    assert found == (cell or (("k", "sl, yarn in front"), ("k", "k")))


def test_a_decrease_says_which_loops_it_was_drawn_through(vocabulary: Vocabulary) -> None:
    """Columns are counted to the left; a yarn-over comes from nothing."""
    found = laid_out("*k1, yo, k2tog; rep from * to end / purl", vocabulary)
    assert found.cell[0] == ("k", "yo from nothing", "k2tog from -1,0")
    assert found.cell[1] == ("k", "k", "k")


def test_a_stitch_passed_over_stands_with_the_one_it_was_passed_over(vocabulary: Vocabulary) -> None:
    """The slipped loop is gone, and nobody takes the stitch left for a plain one."""
    found = laid_out("*yo, sl 1, k1, psso; rep from * to end / purl", vocabulary)
    assert found.cell[0] == ("yo from nothing", "k, 1 passed over")


def test_a_cable_spelt_out_says_where_it_was_held(vocabulary: Vocabulary) -> None:
    """Held in front and held behind cross to different sides."""
    front, back = (
        laid_out(f"*sl next 1 st to cn and hold {where}, k1, k1 from cn; rep from * to end / purl", vocabulary)
        for where in ("in front", "at back")
    )
    assert front.cell[0] == ("k from 1", "k from -1, held in front")
    assert back.cell[0] == ("k from 1", "k from -1, held behind")


@pytest.mark.parametrize(
    "text",
    [
        "k24",
        "k1, yo, k to end",
        "*k2tog; rep from * to end / *kfb; rep from * to end",
        "k2, turn, p2",
        "*patt 2; rep from * to end",
    ],
)
def test_rows_that_are_no_one_repeat_have_no_texture(text: str, vocabulary: Vocabulary) -> None:
    """A fixed count, a growing one, rows of other lengths, a turn, and stitches that are not named."""
    assert texture_of(rows_of(text, vocabulary), vocabulary) is None


def test_the_starters_of_plain_stitches_come_out_by_another_road(
    starters: Mapping[str, Component], vocabulary: Vocabulary
) -> None:
    """The stitches of each row worked out by their effects alone give the same texture as the loops."""
    compared = 0
    for component in starters.values():
        pairs = zip(derive(component, vocabulary).versions, textures(component, vocabulary), strict=True)
        for version, texture in pairs:
            other = by_effects(component, vocabulary, derive(component, vocabulary).versions.index(version))
            if texture is not None and other is not None:
                compared += 1
                assert canonical((texture.cell,)) == canonical((straight(other),)), component.slug
    assert compared >= 40


def by_effects(component: Component, vocabulary: Vocabulary, index: int) -> Cell | None:
    """Return one repeat of rows that are plain stitches one to one, from the effects of their stitches."""
    version = derive(component, vocabulary).versions[index]
    start = version.starts[0] if version.starts else None
    if start is None or not start.of or version.first_side == "round":
        return None
    rows = []
    for place in range(version.row_repeat * (1 + version.row_repeat % 2)):
        row, side = version.rows[place % version.row_repeat], sides_of(version.rows)[0]
        on_right = (side == "RS") == (place % 2 == 0)
        try:
            works = from_right(row, on_right, start.least + 3 * start.of, vocabulary)
        except NotPlain:
            return None
        if any(work.key not in ("k", "p", "k tbl", "p tbl") for work in works):
            return None
        rows.append(tuple(work.key for work in works)[start.least : start.least + start.of])
    return tuple(rows)


def test_what_the_starters_show_agrees_with_what_their_rows_say(
    starters: Mapping[str, Component], vocabulary: Vocabulary
) -> None:
    """Openings and strands counted on the loops are those counted in the words of the rows."""
    for component in starters.values():
        for version, texture in zip(
            derive(component, vocabulary).versions, textures(component, vocabulary), strict=True
        ):
            if texture is not None:
                seen = showing(texture)
                assert max(seen.openings, default=0) == most_opened(version), component.slug
                assert seen.strand == most_slipped(version), component.slug


def test_a_texture_shows_its_ridges_twists_and_slipped_rows(vocabulary: Vocabulary) -> None:
    """In one smallest cell: garter has a ridge on each side; welts have none; a loop slipped in two rows is counted."""
    assert showing(laid_out("knit", vocabulary)).ridges == (1, 1)
    assert showing(laid_out("knit / purl / knit / knit / purl / knit", vocabulary)).ridges == (0, 0)
    assert showing(laid_out("*k tbl, p1; rep from * to end / *k1, p tbl; rep from * to end", vocabulary)).twisted == 1
    slipped = showing(laid_out("*k2, sl 1 wyib; rep from * to end / *sl 1 wyif, p2; rep from * to end", vocabulary))
    assert (slipped.strand, slipped.rows_slipped) == (1, None)
    slipped = showing(laid_out("*k2, sl 1; rep from * to end / *sl 1, p2; rep from * to end / knit / purl", vocabulary))
    assert (slipped.strand, slipped.rows_slipped, slipped.looks["slipped"]) == (1, 2, 2)
    assert showing(laid_out("*k2, sl 4; rep from * to end / purl", vocabulary)).strand == 4
    assert showing(laid_out("*c4f, p2; rep from * to end / *k2, p4; rep from * to end", vocabulary)).crossed == 4


def test_a_texture_shows_each_opening_with_its_yarn_overs(vocabulary: Vocabulary) -> None:
    """Single and double ones, and one wrapped twice, also across the join of the repeat."""
    text = "*yo, k2tog, k2tog, yo, k2tog, yo wrapping yarn twice, k2tog, yo; rep from * to end / purl"
    assert sorted(showing(laid_out(text, vocabulary)).openings) == [1, 2, 2]
    text = "*yo, k2tog, k2tog, yo; rep from * to end / purl"
    assert showing(laid_out(text, vocabulary)).openings == (2,)


def test_counts_alone_never_rule_out_a_texture_that_is_shared(
    starters: Mapping[str, Component], vocabulary: Vocabulary
) -> None:
    """Each starter against each: what is passed over by its counts has none of the cells."""
    cells = {each: {cell for cell in canonical_textures(each, vocabulary) if cell} for each in starters.values()}
    passed = [(one, two) for one in cells for two in cells if not may_share(two, cells[one], vocabulary)]
    assert len(passed) > len(cells)
    assert not any(cells[one] & cells[two] for one, two in passed)


def test_textures_that_are_shifted_turned_or_mirrored_share_a_canonical_form(vocabulary: Vocabulary) -> None:
    """Stocking stitch and its back, a slant to either side, and lace leaning the other way."""
    pairs = [
        ("Row 1: knit.\nRow 2: purl.", "Row 1: purl.\nRow 2: knit."),
        (
            "Row 1: *k3, p1; rep from * to end.\nRow 2: *k2, p2; rep from * to end.",
            "Row 1: *p1, k3; rep from * to end.\nRow 2: *p2, k2; rep from * to end.",
        ),
        (
            "Row 1: *k1, yo, k2tog; rep from * to end.\nRow 2: purl.",
            "Row 1: *ssk, yo, k1; rep from * to end.\nRow 2: purl.",
        ),
    ]
    for one, other in pairs:
        assert canonical_textures(body(one), vocabulary) == canonical_textures(body(other), vocabulary) != (None,)


def in_words(cell: Cell) -> Component:
    """Return a body whose rows, worked flat, show this cell on the right side; an odd number of rows twice."""
    rows = []
    for number, faces in enumerate(repeated(cell, len(cell) * (1 + len(cell) % 2), len(cell[0])), 1):
        worked = faces if number % 2 else tuple("kp"[label == "k"] for label in reversed(faces))
        rows.append(f"Row {number} ({'RS' if number % 2 else 'WS'}): *{', '.join(f'{label}1' for label in worked)}")
    return body("".join(f"{row}; rep from * to end.\n" for row in rows))


@given(KNIT_AND_PURL, st.integers(0, 4), st.integers(0, 4), st.integers(0, 7))
def test_a_shifted_turned_or_mirrored_copy_in_words_is_the_same_texture(
    vocabulary: Vocabulary, cell: Cell, up: int, along: int, move: int
) -> None:
    """From the words of the rows to the canonical form: every copy is found."""
    copy = shifted(list(images(cell, PLAIN))[move], up % len(cell), along % len(cell[0]))
    found = [canonical_textures(in_words(one), vocabulary) for one in (cell, copy)]
    assert found[0] == found[1] == (canonical(images(straight(cell), PLAIN)),)


@given(KNIT_AND_PURL, KNIT_AND_PURL)
def test_textures_in_words_are_the_same_just_where_their_cells_are(
    vocabulary: Vocabulary, one: Cell, other: Cell
) -> None:
    """No false alarm: other textures have another canonical form."""
    forms = [canonical(images(straight(cell), PLAIN)) for cell in (one, other)]
    found = [canonical_textures(in_words(cell), vocabulary) for cell in (one, other)]
    assert (found[0] == found[1]) == (forms[0] == forms[1])


def test_an_edge_wider_than_its_least_count_is_no_endless_texture(vocabulary: Vocabulary) -> None:
    """Four stitches that become twelve for a row reach into what would be taken for the middle."""
    rows = rows_of("kfbf 4 times, k to end / p to last 12 sts, p3tog 4 times", vocabulary)
    assert texture_of(rows, vocabulary) is None


def test_a_stitch_cast_on_has_no_look_that_is_known(vocabulary: Vocabulary) -> None:
    """The vocabulary holds stitches alone: it says of a loop of bare yarn neither that it is knit nor purl."""
    found = laid_out("*k2tog, cast on 1 st; rep from * to end / purl", vocabulary)
    assert [found.looks[label] for label in found.cell[0]] == ["knit", "not known"]
