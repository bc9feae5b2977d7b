"""The figures of CHANGES.md and README.md that no console block prints are those of the program."""

from __future__ import annotations

import re
import tomllib

import pytest

from counterpane.craft.rows.read import MOST_FATAL
from counterpane.craft.rows.words import NUMBER_WORDS
from counterpane.craft.rules import wording
from counterpane.seeding import load_components
from counterpane.seeding.styles import load_styles
from counterpane.serving import Serving
from docs.console import TOP

CHANGES = " ".join((TOP / "CHANGES.md").read_text("utf-8").split())
README = (TOP / "README.md").read_text("utf-8")
BOOKS = {"lambert-1843", "mee-1846", "dillmont-1886"}


def _from_books() -> int:
    return sum(part.kind in ("body", "border") and part.provenance.source in BOOKS for part in load_components())


@pytest.mark.parametrize(
    ("said", "true"),
    [
        (r"(\S+) rules of wording", len(wording.RULES)),
        (r"opens with (\S+) textures, laces and edgings", _from_books()),
        (r"of which (\S+) places cannot be read", MOST_FATAL),
        (r"styles are data: (\S+) ship with the program", len(load_styles())),
    ],
)
def test_a_figure_of_the_changes_is_true(said: str, true: int) -> None:
    """Whoever adds a rule, a part or a style changes the figure that counts them."""
    found = re.search(said, CHANGES)
    assert found
    assert NUMBER_WORDS.get(found[1].lower()) == true or found[1] == str(true)


def test_the_python_that_the_documents_ask_for_is_that_of_the_package() -> None:
    """README.md and DEVELOPERS.md name the same oldest Python as pyproject.toml."""
    oldest = tomllib.loads((TOP / "pyproject.toml").read_text("utf-8"))["project"]["requires-python"].removeprefix(">=")
    texts = (README, (TOP / "DEVELOPERS.md").read_text("utf-8"))
    assert [re.findall(r"Python (\d\.\d+) or later", text) for text in texts] == [[oldest], [oldest]]


def test_the_address_that_the_readme_names_is_where_the_library_is_served() -> None:
    """The port is that of the settings where nobody names another."""
    assert {*re.findall(r"http://127\.0\.0\.1:(\d+)", README)} == {str(Serving("").port)}
