"""Which counts a component admits, with the parameters it takes."""

from __future__ import annotations

from dataclasses import replace

import pytest
from hypothesis import given
from hypothesis import strategies as st

from counterpane.craft.component import Component, Parameter, derive
from counterpane.craft.counts import Progression
from counterpane.craft.stitches import Vocabulary
from counterpane.library.parts.telling import classes_of, counts_json
from counterpane.library.ports import CountClass


def with_widths(starters: dict[str, Component], slug: str, least: int, step: int, most: int | None) -> Component:
    """Return a starter that takes these numbers of stitches."""
    return replace(starters[slug], parameters=(Parameter("stitches", least, least, step, most),))


@given(widths=st.tuples(st.integers(1, 30), st.integers(1, 12), st.none() | st.integers(30, 60)))
@pytest.mark.parametrize("slug", ["waffle", "basket-weave", "garter"])
def test_a_count_is_admitted_that_some_allowed_value_gives(
    slug: str, widths: tuple[int, int, int | None], starters: dict[str, Component], vocabulary: Vocabulary
) -> None:
    """The classes hold just the counts of the rows that the parameter reaches."""
    least, step, most = widths
    component = with_widths(starters, slug, least, step, most)
    derived = derive(component, vocabulary)
    classes = classes_of(component, derived)
    for count in range(1, 90):
        allowed = count >= least and (count - least) % step == 0 and (most is None or count <= most)
        assert any(each.admits(count) for each in classes) == (allowed and derived.admits(count))


@pytest.mark.parametrize(("most", "admits"), [(None, True), (7, False), (8, True)])
def test_a_fixed_count_is_admitted_where_the_parameter_reaches_it(
    most: int | None, admits: bool, starters: dict[str, Component], vocabulary: Vocabulary
) -> None:
    """A part of 8 stitches takes 8 or nothing."""
    rows = replace(starters["garter"].versions[0], rows="Row 1 (RS): k8.\nRow 2 (WS): k8.\n")
    component = replace(with_widths(starters, "garter", 2, 2, most), versions=(rows,))
    assert bool(classes_of(component, derive(component, vocabulary))) == admits


@pytest.mark.parametrize("step", [10**17 + 3, 10**9 + 7, 999_983])
def test_a_great_step_is_joined_in_bounded_time(
    step: int, starters: dict[str, Component], vocabulary: Vocabulary
) -> None:
    """Counts beyond what can be asked about are left out, and every class fits a machine word."""
    component = with_widths(starters, "basket-weave", 12, step, None)
    classes = classes_of(component, derive(component, vocabulary))
    assert all(each.admits(12) and each.modulus < 2**63 for each in classes)
    assert classes == (CountClass(0, 12, 12) if 8 * step > 10**18 - 1 else CountClass(8 * step, 12, 12),)


def test_counts_are_told_as_a_check_tells_them() -> None:
    """One multiple, one fixed count, several classes, or none."""
    multiple, fixed = Progression(6, 2, 8), Progression.only(24)
    assert counts_json((multiple,))["multiple"] == {"of": 6, "plus": 2, "least": 8}
    assert counts_json((fixed,)) == {"multiple": None, "fixed": 24, "classes": None}
    assert [each["of"] for each in counts_json((multiple, fixed))["classes"]] == [6, 0]
    assert counts_json(()) == {"multiple": None, "fixed": None, "classes": None}


def test_every_starter_admits_the_counts_of_its_examples(
    starters: dict[str, Component], vocabulary: Vocabulary
) -> None:
    """An example that the rows hold is found by its count, unless no allowed width is so wide."""
    for component in starters.values():
        classes = classes_of(component, derive(component, vocabulary))
        assert classes, component.slug
        for example in component.examples:
            widths = [each for each in component.parameters if each.name == "stitches"]
            reached = all(
                example.stitches >= each.least and (example.stitches - each.least) % each.step == 0 for each in widths
            )
            assert not reached or any(each.admits(example.stitches) for each in classes), component.slug
