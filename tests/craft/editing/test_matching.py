"""Which query a finding is: the same one wherever its row went, another one where only the rule is the same."""

from __future__ import annotations

import random
from dataclasses import replace

from counterpane.craft.editing import Query
from counterpane.craft.editing.matching import paired


def query(row: int, words: str, body: str, line: int | None = None) -> Query:
    """Return a query about a row."""
    return Query(0, "", rule="unknown-term", row=str(row), line=line or row, printed=f"Row {row}: {body}", words=words)


ROWS = [query(row, "skq", f"K{row}, skq, k1.") for row in (1, 3, 5)]


def moved(found: Query, by: int) -> Query:
    """Return a query after rows were put in above it."""
    row = int(found.row or 0) + by
    return replace(found, row=str(row), line=row, printed=found.printed.replace(f"Row {found.row}", f"Row {row}"))


def test_lines_put_in_above_do_not_disturb() -> None:
    """A query is known by its row and words and not by its line."""
    assert paired(ROWS, [replace(each, line=(each.line or 0) + 30) for each in ROWS]) == {0: 0, 1: 1, 2: 2}


def test_a_row_numbered_anew_is_known_by_its_words() -> None:
    """Two rows put in above make row 1 into row 3, and its query goes with it."""
    assert paired(ROWS, [moved(each, 2) for each in ROWS]) == {0: 0, 1: 1, 2: 2}


def test_a_section_named_anew_does_not_disturb() -> None:
    """Rows alike but for their number stay apart."""
    twins = [query(3, "skq", "K1, skq."), query(4, "skq", "K1, skq.")]
    assert paired(twins, [replace(twins[1], section="Border")]) == {0: 1}


def test_the_same_fault_in_two_rows_stays_two_queries() -> None:
    """Mending the first leaves the others as they are."""
    assert paired(ROWS, ROWS[1:]) == {0: 1, 1: 2}


def test_a_row_edited_beside_the_fault_is_the_same_query() -> None:
    """The words at the place are the same in the same row."""
    assert paired(ROWS[:1], [query(1, "skq", "P7, skq, k1.")]) == {0: 0}


def test_a_fault_in_other_words_of_the_row_is_the_same_query() -> None:
    """A count that was wrong and is wrong again is one question."""
    assert paired(ROWS[:1], [query(1, "sqk", "K1, sqk, k1.")]) == {0: 0}


def test_two_faults_alike_in_one_row_are_two_queries() -> None:
    """Both are kept, in their order."""
    twin = query(1, "skq", "K1, skq, skq.")
    assert paired([twin, twin], [twin, twin]) == {0: 0, 1: 1}
    assert paired([twin, twin], [query(1, "skq", "K1, skp, skq.")]) == {0: 0}


def test_what_is_missing_is_told_apart_by_what_is_said() -> None:
    """A gauge that is given leaves the question about the yarn as it is, with its answer."""
    place = Query(0, "", rule="front-matter-missing", line=1, printed="Leaf", words="Leaf")
    gauge, yarn, size = (
        replace(place, finding=f"The pattern does not state the {what}.") for what in ("gauge", "yarn", "size")
    )
    assert paired([gauge, yarn], [yarn]) == {0: 1}
    assert paired([gauge, yarn], [replace(yarn, words="Fern", printed="Fern"), size]) == {0: 1}


def test_another_rule_in_the_same_place_is_another_query() -> None:
    """The rule is part of what is asked."""
    assert paired(ROWS, [replace(ROWS[0], rule="ambiguous-term")]) == {}


def test_no_finding_is_two_queries_whatever_the_mixture() -> None:
    """Each earlier query and each finding takes part in one pair at most."""
    chance = random.Random(7)
    for _ in range(200):
        old = [
            query(chance.randrange(4), chance.choice("ab"), chance.choice("xyz")) for _ in range(chance.randrange(8))
        ]
        new = [
            query(chance.randrange(4), chance.choice("ab"), chance.choice("xyz")) for _ in range(chance.randrange(8))
        ]
        pairs = paired(old, new)
        assert len(set(pairs.values())) == len(pairs)
        assert all(old[earlier].rule == new[found].rule for found, earlier in pairs.items())
