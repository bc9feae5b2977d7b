"""Real requests changed by chance into broken and odd ones."""

from __future__ import annotations

import json
import random
import re
from collections.abc import Sequence
from pathlib import Path
from typing import Any

from counterpane.craft.component import content_of
from counterpane.seeding import load_components

TEXTS = Path(__file__).parents[1] / "texts"

SIGNS = list("*()[]{}.,;:-–—=+&/'\"“”†#_~^|\\ \t\n\r\0\u2028\u00a0\u200b\u202e½éß\ufeff\U0001f9f6٣\ud800")
ODD: tuple[Any, ...] = (
    *(None, True, False, 0, -1, 1, 2, 3, 0.5, 1e-300, 1e308, -0.0, float("nan"), float("inf")),
    *(10**6, 10**15, 2**53, 10**18 - 1, 10**18, 2**63, 10**400, "", "0", "1/3", "NaN", "null", " ", "\0", "\ud800"),
    *([], {}, [[[]]], [None], {"": None}, "é" * 300, "k2, " * 5_000, "Row 1: *k2, p2; rep from * to end."),
    *("waffle", "garter-border", "long-tail", "plain-bind-off", "no-such-part", "../../etc/passwd", "'; --"),
)
NUMBERS = ("0", "00", "-1", "1", "2.5", "1/2", "½", "1,000,000", "999999999999999999", "10 (0, 12)", "zero", "twelve")
MOST_MEMBERS = 2_000
"""Members of a list that is made longer, again and again: the request is to be odd, not to fill the memory; house."""
Json = Any


def twisted_text(draw: random.Random, text: str) -> str:
    """Return a text with some of its numbers, words and signs changed."""
    for _ in range(draw.choice((0, 0, 1, 2))):
        numbers = [match.span() for match in re.finditer(r"\d+", text)]
        at, end = draw.choice(numbers) if numbers else (0, 0)
        text = text[:at] + draw.choice(NUMBERS) + text[end:]
    for _ in range(draw.choice((0, 1, 1, 2, 5, 30))):
        at, end = sorted((draw.randrange(len(text) + 1), draw.randrange(len(text) + 1)))
        end = min(end, at + draw.choice((0, 1, 3, 40)))
        text = text[:at] + draw.choice((*SIGNS, "", text[at:end] * 3, str(draw.choice(ODD)))) + text[end:]
    return text[: draw.choice((60_000, 60_000, 200, 20))]


def twisted(draw: random.Random, value: Json, others: Sequence[Json]) -> Json:
    """Return a value with a change somewhere in it."""
    if draw.random() < 0.12 or not (value and isinstance(value, dict | list)):
        return _another(draw, value, others)
    if isinstance(value, list):
        return _twisted_list(draw, list(value), others)
    changed = dict(value)
    name = draw.choice(list(changed))
    act = draw.randrange(12)
    if act == 0:
        del changed[name]
    elif act == 1:
        changed[draw.choice(("", name + "s", "slug", "x\0", "component", "rows", "text"))] = draw.choice(ODD)
    elif act == 2:
        other = draw.choice(list(changed))
        changed[name], changed[other] = changed[other], changed[name]
    else:
        changed[name] = twisted(draw, changed[name], others)
    return changed


def _twisted_list(draw: random.Random, value: list[Json], others: Sequence[Json]) -> Json:
    at = draw.randrange(len(value))
    act = draw.randrange(8)
    if act == 0:
        return (value * draw.choice((2, 30, 300)))[:MOST_MEMBERS]
    if act == 1:
        return value[:at]
    value[at] = twisted(draw, value[at], others)
    return value


def _another(draw: random.Random, value: Json, others: Sequence[Json]) -> Json:
    """Return something of the same type, or of any."""
    if isinstance(value, str) and draw.random() < 0.6:
        return twisted_text(draw, value)
    if isinstance(value, int | float) and draw.random() < 0.6:
        return draw.choice((value + 1, value - 1, value * 2, value * 1000, -value, value // 7, round(value, 1)))
    if draw.random() < 0.1:
        return json.loads("[" * (deep := draw.choice((3, 31, 40))) + "]" * deep)
    return draw.choice((*ODD, draw.choice(others), [value], {"component": value}, [value] * 5))


def body_of(draw: random.Random, value: Json) -> bytes:
    """Return a value as a body, now and then with bytes that are broken."""
    data = json.dumps(value, ensure_ascii=draw.random() < 0.5, default=float).encode("utf-8", "surrogatepass")
    if draw.random() < 0.1:
        data = twisted_bytes(draw, data)
    if draw.random() < 0.03:
        data = data.replace(b"{", b'{"text":1,"slug":"x","text":2,', 1)
    return data


def twisted_bytes(draw: random.Random, data: bytes) -> bytes:
    """Return bytes that were cut, changed, doubled or coded in another way."""
    at = draw.randrange(len(data) + 1)
    some = bytes(draw.choices(range(256), k=draw.choice((1, 4))))
    some_text = data.decode("utf-8", "replace").encode(draw.choice(("utf-16", "utf-32", "utf-8-sig")), "replace")
    return draw.choice((data[:at], data[:at] + some + data[at:], data[at:] + data[:at], data * 2, some_text, b""))


def texts() -> list[str]:
    """Return patterns as people paste them, and the rows of the starters."""
    rows = [each["rows"] for part in load_components() for each in content_of(part).get("versions", ())]
    return [path.read_text("utf-8") for path in sorted(TEXTS.glob("*.txt"))] + rows
