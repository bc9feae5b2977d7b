"""The matrix as a picture: a grid of letters whose grounds differ in shade and hatching, never in colour alone."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from itertools import groupby
from typing import Any
from xml.sax.saxutils import escape

from counterpane.library.parts.matrix_text import LETTERS, WORDS, question, sign

WIDE, HIGH = 26, 20
NAMES, TOP, EDGE, LEGEND = 190, 190, 12, 64
GROUNDS = {"fits": "#ffffff", "some": "url(#dots)", "change": "url(#stripes)", "no": "#d5d5d5"}
_DEFINED = (
    '<defs><pattern id="dots" width="6" height="6" patternUnits="userSpaceOnUse"><rect width="6" height="6" '
    'fill="#ffffff"/><circle cx="1.5" cy="1.5" r="0.8" fill="#8a8a8a"/></pattern>'
    '<pattern id="stripes" width="6" height="6" patternUnits="userSpaceOnUse"><rect width="6" height="6" '
    'fill="#ffffff"/><path d="M0 6 6 0" stroke="#b9b9b9" stroke-width="1"/></pattern></defs>'
)
_STYLE = (
    "<style>text{font:12px sans-serif;fill:#1a1a1a}.cell{text-anchor:middle;font-weight:600}"
    ".body{text-anchor:end}.place{font-weight:600}.line{stroke:#6f6f6f;stroke-width:0.6;fill:none}</style>"
)


def as_svg(answer: Mapping[str, Any]) -> str:
    """Return the matrix as SVG, each cell with its reason for those who read it out or point at it."""
    columns, rows = len(answer["others"]), len(answer["rows"])
    width = NAMES + columns * WIDE + TOP // 2 + EDGE
    height = LEGEND + TOP + rows * HIGH + EDGE
    drawn = (_legend(answer), *_columns(answer), *_rows(answer))
    return (
        f'<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 {width} {height}" width="{width}" height="{height}" '
        f'role="img"><title>Which parts fit which bodies</title><desc>{escape(question(answer))}</desc>'
        f'{_DEFINED}{_STYLE}<rect width="{width}" height="{height}" fill="#ffffff"/>{"".join(drawn)}</svg>\n'
    )


def _legend(answer: Mapping[str, Any]) -> str:
    """Draw the question and what the signs mean."""
    drawn, at = [f'<text x="{EDGE}" y="20">{escape(question(answer))}</text>'], EDGE
    for state, letter in LETTERS.items():
        drawn.append(_box(at, 32, state, letter, ""))
        drawn.append(f'<text x="{at + WIDE + 6}" y="46">{WORDS[state]}</text>')
        at += WIDE + 110
    drawn.append(f'<text x="{at}" y="46">+ there is something else to say of the two</text>')
    return "".join(drawn)


def _columns(answer: Mapping[str, Any]) -> Iterator[str]:
    """Draw the places over their columns, and the names slanting above them."""
    foot = LEGEND + TOP
    for number, other in enumerate(answer["others"]):
        at = NAMES + number * WIDE + WIDE // 2
        yield f'<text transform="translate({at + 4} {foot - 6}) rotate(-60)">{escape(other["slug"])}</text>'
    start = 0
    for place, group in groupby(answer["others"], key=lambda other: str(other["place"])):
        count = len(list(group))
        left = NAMES + start * WIDE
        yield f'<text class="place" x="{left + 2}" y="{LEGEND + 14}">{place}</text>'
        yield f'<path class="line" d="M{left} {LEGEND + 18}V{foot + len(answer["rows"]) * HIGH}"/>'
        start += count


def _rows(answer: Mapping[str, Any]) -> Iterator[str]:
    for number, (body, row) in enumerate(zip(answer["bodies"], answer["rows"], strict=True)):
        top = LEGEND + TOP + number * HIGH
        yield f'<text class="body" x="{NAMES - 6}" y="{top + 14}">{escape(body["slug"])}</text>'
        for column, (other, cell) in enumerate(zip(answer["others"], row, strict=True)):
            said = f"{body['slug']}, {other['place']} {other['slug']}: {WORDS[cell['state']]}. {cell['reason']}"
            yield _box(NAMES + column * WIDE, top, cell["state"], sign(cell), said)


def _box(left: int, top: int, state: str, letter: str, said: str) -> str:
    title = f"<title>{escape(said)}</title>" if said else ""
    return (
        f'<g>{title}<rect class="line" x="{left}" y="{top}" width="{WIDE}" height="{HIGH}" '
        f'style="fill:{GROUNDS[state]}"/><text class="cell" x="{left + WIDE // 2}" y="{top + 14}">{letter}</text></g>'
    )
