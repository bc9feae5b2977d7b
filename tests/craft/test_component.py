"""Components: their content, and what follows from their rows."""

from __future__ import annotations

import json
from collections.abc import Mapping

import pytest

from counterpane.craft.component import Component, component_of, content_of, derive
from counterpane.craft.counts import Progression
from counterpane.craft.stitches import Vocabulary
from counterpane.craft.trace import trace
from craft.textures import body


def test_content_and_component_are_each_others_inverse(starters: Mapping[str, Component]) -> None:
    """Every starter comes back the same from its content, and the content is plain JSON."""
    for component in starters.values():
        content = content_of(component)

        assert component_of(content) == component
        assert content_of(component_of(content)) == content == json.loads(json.dumps(content))


def test_a_component_without_printed_words_has_the_content_of_one_that_knows_of_none(
    starters: Mapping[str, Component],
) -> None:
    """What the source says stands in the content where there is something; its absence changes no hash."""
    assert "printed" not in content_of(starters["garter"])["provenance"]
    assert content_of(starters["coral-lace"])["provenance"]["printed"].startswith("cast on any number of stitches")


def test_a_content_may_leave_out_what_has_a_default() -> None:
    """A content with the required fields alone makes a component whose safety is not known."""
    content = {"slug": "a", "kind": "body", "name": "A", "summary": "B", "safety": {}}
    made = component_of({**content, "provenance": {"source": "s", "licence": "l", "author": "a"}})

    assert made.safety.fibre == "not known"
    assert made.versions == ()


def test_the_multiple_follows_from_the_rows(starters: Mapping[str, Component], vocabulary: Vocabulary) -> None:
    """Basket weave takes 8n + 4, at least 12, in 12 rows (common practice, no source)."""
    derived = derive(starters["basket-weave"], vocabulary)
    version = derived.versions[0]

    assert derived.starts == (Progression(8, 4, 12),)
    assert (version.row_repeat, version.first_side, version.last_side, version.drift) == (12, "RS", "WS", 0)
    assert (derived.admits(20), derived.admits(21)) == (True, False)


def test_versions_for_odd_and_even_counts_admit_every_count(
    starters: Mapping[str, Component], vocabulary: Vocabulary
) -> None:
    """Seed stitch has rows for both kinds of count, which together are all counts from two on."""
    derived = derive(starters["seed-stitch"], vocabulary)

    assert derived.starts == (Progression(1, 0, 2),)
    assert [derived.version_for(count) for count in (152, 153)] == [derived.versions[1], derived.versions[0]]
    assert derived.version_for(1) is None


def test_counts_that_are_no_single_progression_stay_apart(vocabulary: Vocabulary) -> None:
    """A multiple of 4 and a multiple of 6 are two progressions."""
    fours, sixes = (f"Row 1: *k{half}, p{half}; rep from * to end." for half in (2, 3))
    derived = derive(body(fours, sixes), vocabulary)

    assert derived.starts == (Progression(4, 0, 4), Progression(6, 0, 6))
    assert derived.said == "a multiple of 4 stitches, at least 4 or a multiple of 6 stitches, at least 6"


def test_counts_that_another_version_holds_add_nothing(vocabulary: Vocabulary) -> None:
    """Rows for any count and rows for odd counts from a hundred thousand on are rows for any count."""
    derived = derive(body("Row 1: knit.", "Row 1: k100000, *p1, k1; rep from * to last st, k1."), vocabulary)

    assert derived.starts == (Progression(1, 0, 1),)


@pytest.mark.parametrize(
    ("row", "said"),
    [
        ("knit", "any number of stitches"),
        ("k2, p to end", "any number of stitches, at least 2"),
        ("*k1, p1; rep from * to end", "an even number of stitches, at least 2"),
        ("k1, *p1, k1; rep from * to end", "an odd number of stitches, at least 3"),
        ("k3, *p3, k3; rep from * to end", "a multiple of 6 stitches plus 3, at least 9"),
        ("k7", "exactly 7 stitches"),
        ("k1", "exactly 1 stitch"),
        ("k2, *p3, k3", "no number of stitches"),
    ],
)
def test_counts_are_said_as_a_knitter_says_them(row: str, said: str, vocabulary: Vocabulary) -> None:
    """The derived counts read as words; rows that cannot be read admit no count."""
    assert derive(body(f"Row 1 (RS): {row}."), vocabulary).said == said


def test_a_cast_on_admits_every_count_from_its_least(starters: Mapping[str, Component], vocabulary: Vocabulary) -> None:
    """A cable cast-on needs two stitches and takes any number from there."""
    derived = derive(starters["cable-cast-on"], vocabulary)

    assert [derived.admits(count) for count in (1, 2, 10**9)] == [False, True, True]
    assert derived.starts == (Progression(1, 0, 2),)


def test_sides_follow_from_the_one_that_is_stated(vocabulary: Vocabulary) -> None:
    """A second row on the RS makes the first one a WS row; with nothing stated row 1 is a RS row."""
    stated = derive(body("Row 1: purl.\nRow 2 (RS): knit.\nRow 3: purl."), vocabulary).versions[0]
    silent = derive(body("Row 1: knit.\nRow 2: purl."), vocabulary).versions[0]
    rounds = derive(body("Round 1: knit.\nRound 2: purl."), vocabulary).versions[0]

    assert (stated.first_side, stated.last_side) == ("WS", "WS")
    assert (silent.first_side, silent.last_side) == ("RS", "WS")
    assert (rounds.first_side, rounds.last_side) == ("round", "round")


def test_deriving_costs_no_more_for_wider_repeats(vocabulary: Vocabulary) -> None:
    """A repeat of two hundred million stitches is derived as well as a small one."""
    derived = derive(body(f"Row 1: *k{10**8}, p{10**8}; rep from * to end."), vocabulary)

    assert derived.admits(2 * 10**8)


def test_both_roads_agree_on_every_starter(starters: Mapping[str, Component], vocabulary: Vocabulary) -> None:
    """Arithmetic and working loop by loop admit the same counts, up to two repeats above the least."""
    for component in starters.values():
        for version in derive(component, vocabulary).versions:
            rows, sides = [row.parts for row in version.rows], [row.side for row in version.rows]
            (start,) = version.starts
            tried = range(start.least + 2 * start.of)
            worked = {n for n in tried if trace(rows, n, vocabulary, sides).steps[-1].after == n}

            assert worked - {0} == {n for n in tried if start.admits(n)}, component.slug
