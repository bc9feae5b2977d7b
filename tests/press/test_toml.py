"""Values as TOML: what is written is read back the same by the standard library."""

from __future__ import annotations

import tomllib

import pytest
from hypothesis import given
from hypothesis import strategies as st

from counterpane.press.toml import assignment, document, literal

TEXTS = st.text(st.characters(exclude_categories=("Cs",)))
PLAIN = TEXTS | st.booleans() | st.integers(-(2**60), 2**60)
VALUES = st.recursive(PLAIN, lambda inner: st.lists(inner, max_size=3) | st.dictionaries(TEXTS, inner, max_size=3))


@given(st.dictionaries(TEXTS, VALUES, max_size=4))
def test_a_document_is_read_back_the_same(table: dict[str, object]) -> None:
    """Odd signs, quotes in rows of three, line ends and tables within tables all survive."""
    assert tomllib.loads(document(table)) == table


@pytest.mark.parametrize(
    "text", ['say "no"', 'three """ quotes', "back\\slash", "a\r\nb", "\x00\x1f\x7f", "k2\n", '"\n"']
)
def test_a_text_of_odd_signs_survives(text: str) -> None:
    """Each sign that TOML would take for its own is escaped."""
    assert tomllib.loads(assignment("said", text)) == {"said": text}


def test_a_text_in_lines_stays_in_lines() -> None:
    """Rows stay readable in the file."""
    assert assignment("rows", "Row 1: knit.\nRow 2: purl.\n") == 'rows = """\nRow 1: knit.\nRow 2: purl.\n"""'


def test_tables_stand_behind_the_plain_keys() -> None:
    """A list of tables is written as headings, since a key behind a heading would belong to it."""
    written = document({"example": [{"stitches": 5}, {"stitches": 7}], "name": "Fan", "gone": None})
    assert written == 'name = "Fan"\n\n[[example]]\nstitches = 5\n\n[[example]]\nstitches = 7\n'


def test_a_value_of_another_sort_is_refused() -> None:
    """A binary fraction would lose its decimals."""
    with pytest.raises(TypeError, match="float has no TOML here"):
        literal(0.1)  # type: ignore[arg-type]
