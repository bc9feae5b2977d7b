"""Every check in this folder says where its figures are from, and none of them is a figure of the demonstration."""

from __future__ import annotations

import ast
import re
from pathlib import Path

import pytest

MODULES = sorted(path for path in Path(__file__).parent.glob("test_*.py") if path != Path(__file__))
SOURCE = re.compile(
    r"sources?\b|common practice|from memory|house (?:model|figure)|computed by an independent script"
    r"|regulation|\bISO\b|\bASTM\b|\bCFR\b|charit|craft yarn council|published|pages?\b|safety notes",
    re.IGNORECASE,
)
DEMO = re.compile(r"seeds/recipes|load_recipes|seeding\.recipes|season/|cli\.commands\.demo|first-frost|harvest-basket")


@pytest.mark.parametrize("module", MODULES, ids=lambda path: path.stem)
def test_a_module_of_checks_names_its_source(module: Path) -> None:
    """Its docstring names a source, or says that there is none or that it is memory or the house's."""
    assert SOURCE.search(ast.get_docstring(ast.parse(module.read_text("utf-8"))) or "")


@pytest.mark.parametrize("module", MODULES, ids=lambda path: path.stem)
def test_no_figure_of_the_demonstration_is_a_check(module: Path) -> None:
    """Its recipes are invented, and prove nothing of the trade."""
    assert not DEMO.search(module.read_text("utf-8"))
