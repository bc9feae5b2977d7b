"""Words stand out from their ground.

Source: Web Content Accessibility Guidelines 2.2 (W3C, 2023), success criteria 1.4.3, 1.4.6 and 1.4.11, and its
definitions of relative luminance and contrast ratio.
"""

from __future__ import annotations

import re
from importlib import resources

import pytest

SHEETS = {"pages": ("counterpane.web", "static/pages.css"), "pattern": ("counterpane.press", "pattern.css")}
LEAST = {"ink": 7.0, "link": 4.5, "seen": 4.5, "line": 3.0}
"""Ink by 1.4.6 (enhanced), links by 1.4.3, lines that bound what can be worked with by 1.4.11."""


def luminance(colour: str) -> float:
    """Return the relative luminance of #rrggbb, as the definition of WCAG gives it."""
    parts = [int(colour[at : at + 2], 16) / 255 for at in (1, 3, 5)]
    red, green, blue = (part / 12.92 if part <= 0.04045 else ((part + 0.055) / 1.055) ** 2.4 for part in parts)
    return 0.2126 * red + 0.7152 * green + 0.0722 * blue


def contrast(one: str, other: str) -> float:
    """Return the contrast of two colours, 1 to 21."""
    dark, light = sorted((luminance(one), luminance(other)))
    return (light + 0.05) / (dark + 0.05)


def schemes(sheet: str) -> list[dict[str, str]]:
    """Return the colours of each scheme of a style sheet: light, dark, and print where there is one."""
    package, path = SHEETS[sheet]
    text = resources.files(package).joinpath(path).read_text("utf-8")
    blocks = re.findall(r":root \{([^}]*--paper[^}]*)\}", text)
    return [dict(re.findall(r"--(\w+): (#[0-9a-f]{6})", block)) for block in blocks]


def test_the_formula_gives_the_figures_of_the_guidelines() -> None:
    """Black on white is 21 to 1, and #767676 the lightest grey that reaches 4.5 on white (from memory)."""
    assert contrast("#000000", "#ffffff") == pytest.approx(21)
    assert contrast("#767676", "#ffffff") > 4.5 > contrast("#777777", "#ffffff")


@pytest.mark.parametrize("sheet", SHEETS)
def test_each_scheme_has_the_contrast_that_reading_needs(sheet: str) -> None:
    """In the light and in the dark."""
    found = schemes(sheet)
    low = [
        (name, each[name], each["paper"])
        for each in found
        for name, least in LEAST.items()
        if name in each and contrast(each[name], each["paper"]) < least
    ]
    assert len(found) >= 2
    assert low == []


def test_words_on_a_soft_ground_stand_out_as_well() -> None:
    """What a pattern sets off has a ground of its own."""
    assert all(contrast(each["ink"], each["soft"]) >= 7 for each in schemes("pattern"))
