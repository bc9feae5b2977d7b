"""The matrix as text: a table of letters for many bodies, a list with reasons for one."""

from __future__ import annotations

import textwrap
from collections.abc import Iterator, Mapping
from typing import Any

LETTERS = {"fits": "F", "some": "S", "change": "C", "no": "-"}
WORDS = {"fits": "fits", "some": "some counts", "change": "with a change", "no": "does not fit"}
REMARKED = "+"
WIDTH = 100


def as_text(answer: Mapping[str, Any]) -> str:
    """Return the matrix as plain text: with reasons where there is one body or one other part, else as letters."""
    told = [_heading(answer)]
    places = {(each["slug"], each["kind"]) for each in answer["others"]}
    told += _listed(answer) if len(answer["bodies"]) == 1 or len(places) == 1 else _grid(answer)
    return "\n".join(told) + "\n"


def key(answer: Mapping[str, Any]) -> str:
    """Say what the letters mean, with the sign of a remark."""
    words = ", ".join(f"{letter} {WORDS[state]}" for state, letter in LETTERS.items())
    return f"{words}; {REMARKED} there is something else to say of the two."


def question(answer: Mapping[str, Any]) -> str:
    """Say at which counts, and with how many stitches beside the body."""
    count = "at all counts that each body takes" if answer["count"] is None else f"with {answer['count']} stitches"
    beside = answer["beside"]
    ends = f"{beside} stitches more on each side" if beside else "the same stitches"
    return f"Bodies {count}; ends, cast-on and bind-off run over {ends}."


def sign(cell: Mapping[str, Any]) -> str:
    """Return a cell as a letter, with the sign of a remark."""
    return LETTERS[cell["state"]] + (REMARKED if cell["remarks"] else "")


def _heading(answer: Mapping[str, Any]) -> str:
    more = answer["more"]
    cut = " There are more parts than are shown." if more["bodies"] or more["others"] else ""
    return f"{question(answer)}{cut}\n{key(answer)}\n"


def _grid(answer: Mapping[str, Any]) -> Iterator[str]:
    """Give the letters: the columns are numbered, since the names of sixty parts do not fit side by side."""
    wide = max((len(body["slug"]) for body in answer["bodies"]), default=0)
    cells = 2 + len(str(len(answer["others"])))
    numbers = "".join(f"{number:>{cells}}" for number in range(1, len(answer["others"]) + 1))
    yield f"{'':{wide}}{numbers}"
    for body, row in zip(answer["bodies"], answer["rows"], strict=True):
        letters = "".join(f"{sign(cell):>{cells}}" for cell in row)
        near = " or ".join(map(str, body["nearest"] or ()))
        yield f"{body['slug']:<{wide}}" + (f"  takes {near}, not {answer['count']}" if near else letters)
    yield ""
    for number, other in enumerate(answer["others"], 1):
        width = f", {other['stitches']} stitches a side" if other["stitches"] else ""
        yield f"{number:>4} {other['place']}: {other['slug']}{width}"


def _listed(answer: Mapping[str, Any]) -> Iterator[str]:
    """Give each pair with its reason, its corrections and its remarks."""
    for body, row in zip(answer["bodies"], answer["rows"], strict=True):
        yield f"{body['slug']}: {body['said']}"
        for other, cell in zip(answer["others"], row, strict=True):
            yield f"  {other['place']}: {other['slug']}: {WORDS[cell['state']]}"
            yield from _wrapped(cell["reason"])
            for correction in cell["corrections"]:
                yield from _wrapped(correction["said"])
            for remark in cell["remarks"]:
                yield from _wrapped(f"{remark['message']} {remark['hint']} ({remark['rule']})")


def _wrapped(text: str) -> list[str]:
    return textwrap.wrap(text, WIDTH, initial_indent="    ", subsequent_indent="      ")
