"""What is said of two parts though their counts meet."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import replace

import pytest

from counterpane.craft.component import Component
from counterpane.craft.pairing import Place, facts_of, remarks
from counterpane.craft.pairing.remarks import edges_differ, looks_differ
from counterpane.craft.rules import ALL
from counterpane.craft.stitches import Vocabulary


@pytest.mark.parametrize(
    ("parts", "place", "rules"),
    [
        (("rib-two-by-two", "rib-three-by-three-border"), "ends", ["textures-fight"]),
        (("rib-two-by-two", "rib-two-by-two-border"), "ends", []),
        (("rib-two-by-two", "rib-three-by-three-border"), "sides", ["textures-merge"]),
        (("garter-ridges", "welt-border"), "sides", ["textures-fight", "border-narrow-for-curl"]),
        (("garter", "garter-border"), "sides", []),
        (("welts", "garter-border"), "ends", ["textures-merge"]),
        (("rib-two-by-two", "plain-bind-off"), "bind-off", ["edge-binds"]),
        (("rib-two-by-two", "cable-cast-on"), "cast-on", ["edge-binds"]),
        (("rib-two-by-two", "sewn-bind-off"), "bind-off", []),
        (("garter", "stretchy-bind-off"), "bind-off", ["edge-flares"]),
        (("garter", "twisted-long-tail"), "cast-on", []),
        (("stocking-stitch", "slipped-selvedge"), "selvedge", []),
        (("stocking-stitch", "seed-stitch-border"), "ends", ["border-narrow-for-curl"]),
        (("seed-stitch", "rib-one-by-one-border"), "sides", []),
        (("basket-weave", "garter-border"), "sides", ["rows-differ-in-height"]),
    ],
)
def test_what_is_said_of_two_parts(
    parts: tuple[str, str],
    place: Place,
    rules: list[str],
    starters: Mapping[str, Component],
    vocabulary: Vocabulary,
) -> None:
    """Each remark stands under the slug of a rule that explains it."""
    body, other = (facts_of(starters[slug], vocabulary) for slug in parts)
    found = [remark.rule for remark in remarks(body, other, place)]
    assert found == rules
    assert set(found) <= set(ALL)


@pytest.mark.parametrize(
    ("cast_on", "bind_off", "said"),
    [
        ("long-tail", "plain-bind-off", 0),
        ("cable-cast-on", "sewn-bind-off", 1),
        ("twisted-long-tail", "purlwise-bind-off", 1),
        ("twisted-long-tail", "sewn-bind-off", 0),
    ],
)
def test_edges_that_stretch_unlike_are_told(
    cast_on: str, bind_off: str, said: int, starters: Mapping[str, Component], vocabulary: Vocabulary
) -> None:
    """Firm against elastic; moderate goes with either."""
    one, other = (facts_of(starters[slug], vocabulary) for slug in (cast_on, bind_off))
    assert len(list(edges_differ(one, other))) == said


@pytest.mark.parametrize(
    ("cast_on", "bind_off", "said"),
    [
        ("long-tail", "plain-bind-off", 0),
        ("long-tail", "sewn-bind-off", 0),
        ("long-tail", "cord-bind-off", 1),
        ("cable-cast-on", "cord-bind-off", 0),
        ("cable-cast-on", "plain-bind-off", 1),
        ("knitted-cast-on", "purlwise-bind-off", 1),
        ("rib-cable-cast-on", "cord-bind-off", 0),
        ("long-tail-purl", "cord-bind-off", 0),
    ],
)
def test_edges_that_look_unlike_are_told(
    cast_on: str, bind_off: str, said: int, starters: Mapping[str, Component], vocabulary: Vocabulary
) -> None:
    """A flat edge against a raised or an open one; where one look is not known, nothing is said."""
    one, other = (facts_of(starters[slug], vocabulary) for slug in (cast_on, bind_off))
    assert len(list(looks_differ(one, other))) == said


def test_what_would_match_is_named(starters: Mapping[str, Component], vocabulary: Vocabulary) -> None:
    """The next step names the looks that go with either end."""
    one, other = (facts_of(starters[slug], vocabulary) for slug in ("cable-cast-on", "plain-bind-off"))
    (remark,) = looks_differ(one, other)
    assert "bind-off that shows a rope or a cord" in remark.hint
    assert "cast-on that shows a chain or a line of bumps" in remark.hint


@pytest.mark.parametrize(("rows", "rules"), [((0, 1, 2, 3), []), ((0, 3, 2, 1), ["textures-fight"])])
def test_a_diagonal_meets_itself_but_not_its_mirror_image(
    rows: tuple[int, ...], rules: list[str], starters: Mapping[str, Component], vocabulary: Vocabulary
) -> None:
    """The same rows go on in the border; with the wrong-side rows exchanged their lines slant the other way."""
    words = [line.split(": ")[1] for line in starters["diagonal-rib"].versions[0].rows.splitlines()]
    text = "\n".join(f"Row {number}: {words[row]}" for number, row in enumerate(rows, 1))
    version = replace(starters["garter-border"].versions[0], rows=text)
    body = facts_of(starters["diagonal-rib"], vocabulary)
    border = facts_of(replace(starters["garter-border"], versions=(version,), examples=()), vocabulary)
    assert body.form == border.form
    assert [remark.rule for remark in remarks(body, border, "ends")] == rules
