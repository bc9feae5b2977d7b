"""Every number of the craft but 0, 1 and 2 has a name, and beside the name its source or whose judgement it is."""

from __future__ import annotations

import ast
import re
from collections.abc import Iterator
from dataclasses import dataclass
from itertools import pairwise
from pathlib import Path

import counterpane.craft

CRAFT = Path(counterpane.craft.__path__[0])
PLAIN = (0, 1, 2)

SOURCE = re.compile(
    r"\bhouse\b|from memory|common practice|by definition|second-hand|\bthe same\b"
    r"|\bCFR\b|\bEN \d|ANEC|Regulation|BedGgstV|GB 18401|Act 112|STANDARD 100|VeiligheidNL|Su et al"
    r"|Craft Yarn Council|Knitting Guild|GATE|Munden|GUM|OEIS|\bpages? (of|on)\b",
    re.IGNORECASE,
)
"""What says where a number is from; "the same" leads on to the note above it."""

EXEMPT = {
    "a position": "counts words, signs or entries along a text or tuple, for which the code around it stands",
    "a power of ten": "turns metric units, percents or digits into one another, which is so by definition",
    "kept answers": "bounds how many answers lie at hand; another number gives the same answers",
    "an age": "months at the ends of the age bands, which `safety/words.py` names",
    "an example": "makes the example of a rule long enough to trip it",
}
"""Why a number may stand without a name."""

LEFT_OUT = {"drawing": "places strokes and words on the paper of a picture; what is to scale comes from the plan"}
"""Folders that are not looked at, and why."""

MOVES = {"word", "number", "range"}
"""Calls of which the arguments are positions."""


@dataclass(frozen=True, slots=True)
class Figure:
    """A number in the code, the nodes around it from the outermost, and the lines of its file."""

    value: object
    line: int
    around: tuple[ast.AST, ...]

    def exempt(self) -> str | None:
        """Return the reason for which the number needs no name, else None."""
        return next((reason for reason in EXEMPT if _IS[reason](self)), None)


def _position(figure: Figure) -> bool:
    inner = figure.around
    sliced = any(isinstance(a, ast.Subscript) and b is a.slice for a, b in pairwise(inner))
    moved = any(isinstance(node, ast.AugAssign) and ast.unparse(node.target).endswith(".at") for node in inner[-3:])
    return sliced or moved or any(isinstance(node, ast.Call) and _called(node) in MOVES for node in inner[-3:])


def _power_of_ten(figure: Figure) -> bool:
    around = figure.around[-2]
    if not isinstance(figure.value, int) or not re.fullmatch("10+", str(figure.value)):
        return False
    sums = isinstance(around, ast.BinOp) and isinstance(
        around.op, ast.Mult | ast.Div | ast.Mod | ast.FloorDiv | ast.Pow
    )
    return sums or _calls(figure, "half_up")


def _called(node: ast.Call) -> str:
    return ast.unparse(node.func).rpartition(".")[2]


def _calls(figure: Figure, name: str) -> bool:
    return any(isinstance(node, ast.Call) and _called(node) == name for node in figure.around)


_IS = {
    "a position": _position,
    "a power of ten": _power_of_ten,
    "kept answers": lambda figure: _calls(figure, "lru_cache"),
    "an age": lambda figure: _calls(figure, "under"),
    "an example": lambda figure: _calls(figure, "rule"),
}


def figures(tree: ast.AST, around: tuple[ast.AST, ...] = ()) -> Iterator[Figure]:
    """Yield the numbers of a tree that need a name, those in words too: `Fraction("5.5")`."""
    path = (*around, tree)
    if isinstance(tree, ast.Constant) and _number(tree.value, around) not in (None, *PLAIN):
        yield Figure(tree.value, tree.lineno, path)
    for child in ast.iter_child_nodes(tree):
        yield from figures(child, path)


def _number(value: object, around: tuple[ast.AST, ...]) -> object:
    if isinstance(value, str):
        exact = around and isinstance(around[-1], ast.Call) and _called(around[-1]) in ("Fraction", "Decimal")
        return value if exact and value not in map(str, PLAIN) else None
    return value if isinstance(value, int | float) and not isinstance(value, bool) else None


def noted(figure: Figure, lines: list[str]) -> bool:
    """Return whether the number stands in a named constant or field with a source in its own paragraph."""
    owner = next((node for node in figure.around if isinstance(node, ast.Assign | ast.AnnAssign)), None)
    within = figure.around[: figure.around.index(owner)] if owner else ()
    if owner is None or not all(isinstance(node, ast.Module | ast.ClassDef) for node in within):
        return False
    about = "".join(ast.get_docstring(node) or "" for node in within if isinstance(node, ast.ClassDef))
    return SOURCE.search(about + "\n".join(_paragraph(lines, owner))) is not None


def _paragraph(lines: list[str], owner: ast.Assign | ast.AnnAssign) -> list[str]:
    """Return the lines about a constant: its own, those above it and those below it up to an empty line."""
    first, last = owner.lineno - 1, (owner.end_lineno or owner.lineno) - 1
    while first > 0 and lines[first - 1].strip():
        first -= 1
    while last + 1 < len(lines) and lines[last + 1].strip():
        last += 1
    return lines[first : last + 1]


def unnamed(text: str) -> list[str]:
    """Return the numbers of a module without a name or a source, with their lines."""
    lines = text.splitlines()
    found = (figure for figure in figures(ast.parse(text)) if not figure.exempt() and not noted(figure, lines))
    return [f"{figure.line}: {lines[figure.line - 1].strip()}" for figure in found]


def test_every_number_of_the_craft_has_a_name_and_a_source() -> None:
    """A house figure says "house", one from memory "from memory", a published one its source."""
    modules = sorted(path for path in CRAFT.rglob("*.py") if path.relative_to(CRAFT).parts[0] not in LEFT_OUT)
    found = [f"{path.relative_to(CRAFT)}:{each}" for path in modules for each in unnamed(path.read_text("utf-8"))]
    assert modules and found == []


def test_a_bare_number_is_found() -> None:
    """In a sum, in a comparison, in a constant without a source, and in words."""
    bare = ["def f(x):\n    return x * 7", "def f(x):\n    return x > 100", "MOST = 12", 'A = 1\nB = Fraction("5.5")']
    assert [len(unnamed(text)) for text in bare] == [1, 1, 1, 1]


def test_a_number_with_a_name_and_a_source_is_not_found() -> None:
    """The source stands in a comment, in the string below, or above a group."""
    good = ["MOST = 12  # House figure.", 'MOST = 12\n"""From memory."""', "# House bounds.\nA = 3\nB, C = 4, 5"]
    assert [unnamed(text) for text in good] == [[], [], []]


def test_each_reason_without_a_name_is_in_use() -> None:
    """A reason that no number of the craft needs leaves the table."""
    all_of = (figure for path in CRAFT.rglob("*.py") for figure in figures(ast.parse(path.read_text("utf-8"))))
    assert {figure.exempt() for figure in all_of} - {None} == {*EXEMPT}
