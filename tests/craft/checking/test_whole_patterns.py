"""Whole patterns as designers paste them, each with its counts worked out by hand, and each broken in one place.

The texts are invented. What each holds stands beside it in a TOML file of the same name: the cast-on, the rows as
"how many, label or run of labels, stitches before, stitches after", the sections in which rows stand, and one change
that makes it wrong, with the rule, the line and a number that the finding says.
"""

from __future__ import annotations

import tomllib
from pathlib import Path
from typing import Any

import pytest

from counterpane.craft.rules import ALL
from counterpane.craft.stitches import Vocabulary
from counterpane.library.texts.checks import check_text

TEXTS = sorted((Path(__file__).parents[2] / "texts").glob("*.txt"))


def expected(path: Path) -> dict[str, Any]:
    """Return what stands beside a text."""
    return tomllib.loads(path.with_suffix(".toml").read_text(encoding="utf-8"))


def listed(lines: list[str]) -> list[tuple[str, int, int]]:
    """Return label and counts of each row: "3 1-3 20 20" is rows 1, 2 and 3 on 20 stitches, "2 next 9 9" two rows."""
    out: list[tuple[str, int, int]] = []
    for line in lines:
        many, label, before, after = line.split()
        first, _, last = label.partition("-")
        labels = [str(number) for number in range(int(first), int(last) + 1)] if last else [label] * int(many)
        assert len(labels) == int(many)
        out += [(label, int(before), int(after)) for label in labels]
    return out


def counted(answer: dict[str, Any]) -> list[dict[str, Any]]:
    """Return the findings of reading and counting above a note; what is said of the wording is tested elsewhere."""
    families = {slug: rule.family for slug, rule in ALL.items()}
    told = (found for found in answer["findings"] if found["severity"] != "note")
    return [
        found for found in told if families[found["rule"]] in ("reading", "counting") or found["severity"] == "error"
    ]


@pytest.mark.parametrize("path", TEXTS, ids=lambda path: path.stem)
def test_a_whole_pattern_comes_out_as_counted_by_hand(path: Path, vocabulary: Vocabulary) -> None:
    """Every row has its counts, every section its name, and nothing is found that is not there."""
    answer, wanted = check_text(path.read_text(encoding="utf-8"), vocabulary), expected(path)
    rows = [(row["label"], row["before"], row["after"]) for row in answer["rows"]]
    assert (answer["cast_on"], rows) == (wanted["cast_on"], listed(wanted["rows"]))
    assert list(dict.fromkeys(row["section"] for row in answer["rows"] if row["section"])) == wanted["sections"]
    assert counted(answer) == []


@pytest.mark.parametrize("path", TEXTS, ids=lambda path: path.stem)
def test_a_broken_pattern_is_stuck_where_it_is_broken(path: Path, vocabulary: Vocabulary) -> None:
    """One change makes one count error, on the line where the knitter meets it, with the number on the needle."""
    text, broken = path.read_text(encoding="utf-8"), expected(path)["broken"]
    assert text.count(broken["find"]) == 1
    answer = check_text(text.replace(broken["find"], broken["put"]), vocabulary)
    errors = [found for found in answer["findings"] if found["severity"] == "error"]
    assert [(found["rule"], found["line"]) for found in errors] == [(broken["rule"], broken["line"])]
    assert broken["says"] in errors[0]["message"]
