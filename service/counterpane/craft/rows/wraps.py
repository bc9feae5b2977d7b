"""Lines put together again that a page has cut: a row goes on where its line ends without an end.

Each line is looked at once, beside the line before it, so that a text of any length costs what its lines cost.
"""

from __future__ import annotations

import re
from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass

from counterpane.craft.rows.kinds import Kind, kind_at, may_begin
from counterpane.craft.rows.labels import label_at
from counterpane.craft.rows.layout import STITCHES, is_marked, without_page_marks
from counterpane.craft.rows.sharing import Shared
from counterpane.craft.rows.words import CUT_WORD, Line, joined

_ANY_SIGN = r"[\u2190-\u21ff\u2500-\u2bff\U0001f300-\U0001faff]\ufe0f?"
_BULLET = re.compile(rf"[\s>|]*(?:(?:[-•*+‣·~]|{_ANY_SIGN}|\[[ x]?\]|\d{{1,3}}[.)])\s+)*")
_ORDER = r"(?:k|knit|p|purl|work)\s+(?:[a-z]+\s+){0,3}?(?:\d+|[a-z]+)\s+rows?\b"
# The first sign stands before all else: a search passes over every other sign at once.
_INNER = re.compile(
    r"[\s,-](?:"
    r"(?<=[.;)!]\s)\s*(?=(?:\*\*)?[a-z0-9(])"
    r"|(?P<head>(?<=:\s)\s*+(?=(?:knit|k|purl|p|work|cast|co|with|using|bind)\b|r(?:(?:ow|nd|ound)s?\s)?\s?\d))"
    r"|(?<=\.-)-*\s*(?=rep)"
    r"|(?<=,)\s+(?=then\s+(?:(?:work|rep|repeat)\s+)?(?:the\s+)?(?:r(?:ows?|nds?|ounds?)\s|first\s))"
    rf"|(?<=,)\s++(?={_ORDER}|rep(?:eat)?\s+from\s+\*)"
    r"|(?:(?<=[^\s,],)\s++|(?<=[^\s,]\s)\s*+)and\s++(?=(?:cast|bind)\s+off\b|"
    rf"{_ORDER}))"
)
_GOING_ON = re.compile(rf"{STITCHES.pattern}|(?:rep|repeat|end|ending|to|then|work|sl|slip|k|p|m1|turn)\b")
_UNFINISHED = frozenset(",;:([*&-+=")
_NOTHING_BEGINS_WITH = frozenset(",;")
_UNFINISHED_WORDS = frozenset("and from to rep repeat then last next as all every the a of on for until".split())
_OPEN_TO_ROWS = re.compile(r"(?:\b(?:and|as|rep|repeat|to|the)|(?:\band|&|[,(])\s+(?:all|every)|&)$")
_LEFT_OPEN = ("and", "as", "rep", "repeat", "to", "the", "all", "every", "&", ",", ";")
_COUNTED = re.compile(r"\d\s*(?:sts?|stitches)?$")
_LONG = 45  # House.
_ITEM = re.compile(r"\d{1,3}[.)]\s")


@dataclass(slots=True)
class _Open:
    """A line that the next may belong to: its pieces, and what its last sentence is."""

    lines: list[Line]
    kind: Kind


def cuts(line: Line, start: int) -> Iterator[int]:
    """Yield where a sentence of a line may begin."""
    for match in _INNER.finditer(line.text, start):
        if match["head"] is None or match.start() > start:
            yield match.end()


def start_of(line: Line) -> int:
    """Return where a line begins behind its bullet; a star before a stitch is no bullet."""
    lead = _BULLET.match(line.text)
    after = lead.end() if lead else 0
    if after and kind_at(line, after) == "prose":
        return len(line.text) - len(line.text.lstrip())
    return after


def blocks(lines: Sequence[Line], shared: Shared | None = None) -> Iterator[list[Line]]:
    """Yield the lines of a text without its page marks, those together of which one may go on with another.

    An empty line parts them; of a text that shares its blocks with others, what begins an instruction does as well
    behind a line that is not left open, so that more of them are alike.
    """
    block: list[Line] = []
    for line in without_page_marks(lines):
        filled = line.text and not line.text.isspace()
        if block and (not filled or (shared is not None and _begins_anew(line, block[-1], shared))):
            yield block
            block = []
        if filled:
            block.append(line)
    if block:
        yield block


def _begins_anew(line: Line, earlier: Line, shared: Shared) -> bool:
    """Tell whether a line begins an instruction, and the one before it is not left open."""
    return not earlier.text.rstrip().endswith(_LEFT_OPEN) and _kinds(line, shared)[0] != "prose"


def unwrapped(block: Sequence[Line], alone: frozenset[int], shared: Shared) -> Iterator[Line]:
    """Yield the lines of a block, which has one at least, each with the lines that go on with it.

    Lines whose numbers are in `alone` neither go on nor are gone on with.
    """
    open_ = _Open([block[0]], _kinds(block[0], shared)[-1])
    for line in block[1:]:
        kinds = _kinds(line, shared)
        if not alone & {line.number, open_.lines[-1].number} and _goes_on(open_, line, kinds[0]):
            open_.lines.append(line)
            open_.kind = kinds[-1] if len(kinds) > 1 else open_.kind
            continue
        yield _whole(open_.lines, shared)
        open_ = _Open([line], kinds[-1])
    yield _whole(open_.lines, shared)


def _whole(lines: Sequence[Line], shared: Shared) -> Line:
    return lines[0] if len(lines) == 1 else shared.of(_together, *lines)


def _together(*lines: Line) -> Line:
    return joined(lines)


def beginnings(line: Line) -> Mapping[int, Kind]:
    """Return what begins at each place of a line where something may, its own beginning first."""
    start, end = start_of(line), len(line.text)
    label = label_at(line.text, start, end)
    places = [start, *(cut for cut in cuts(line, label[1] if label else start) if cut < end)]
    return {place: kind_at(line, place) for place in places}


def _kinds(line: Line, shared: Shared) -> Sequence[Kind]:
    """Return what a line begins with, and what follows in it."""
    if not may_begin(line):
        return ("prose",)
    first, *further = shared.of(beginnings, line).values()
    return (first, *[kind for kind in further if kind != "prose"])


def _goes_on(open_: _Open, line: Line, kind: Kind) -> bool:
    """Tell whether a line is the rest of the one before it."""
    earlier, raw = open_.lines[-1], line.raw.strip()
    if is_marked(raw):
        return False
    ended = earlier.text.rstrip()
    worked = open_.kind in ("row", "order") or bool(STITCHES.match(earlier.text))
    if kind != "prose" and not (worked and _continues(ended, line, kind)):
        return False
    if ended[-1:] == "-" and raw[:1].islower() and CUT_WORD.search(ended):
        return True
    if raw[:1] in _NOTHING_BEGINS_WITH:
        return True
    if open_.kind == "prose":
        return _prose_goes_on(earlier, ended, raw, worked)
    if ended[-1:] in _UNFINISHED or _last_word(ended) in _UNFINISHED_WORDS:
        return True
    if open_.kind not in ("row", "order"):
        return _statement_goes_on(ended, raw)
    if ended[-1:] in ".)" and raw[:1].isdigit():
        return not _ITEM.match(raw)
    if ended[-1:] == ".":
        return raw[:1] in "*([†" or (raw[:1].islower() and bool(_GOING_ON.match(raw)))
    return raw[:1].islower() or raw[:1] in "*([†" or raw[:1].isdigit() or bool(STITCHES.match(raw.lower()))


def _continues(ended: str, line: Line, kind: Kind) -> bool:
    """Tell whether words that could begin an instruction are the rest of a row that has no end yet."""
    if not ended.endswith(_LEFT_OPEN):
        return False
    label = label_at(line.text, start_of(line), len(line.text)) if kind == "row" else None
    if _OPEN_TO_ROWS.search(ended):
        colon = label is not None and line.text[: label[1]].rstrip()[-1:] == ":"
        return not (colon and _last_word(ended) in ("rep", "repeat"))
    return ended[-1:] in ",;" and label is None and kind != "again"


def _statement_goes_on(ended: str, raw: str) -> bool:
    """Tell whether a cast-on, an end or a repeat line goes on: stitches behind a count begin a row of their own."""
    if _COUNTED.search(ended) and STITCHES.match(raw.lower()):
        return False
    return ended[-1:] not in ".!?:" and (raw[:1].islower() or raw[:1].isdigit()) and not _ITEM.match(raw)


def _prose_goes_on(earlier: Line, ended: str, raw: str, worked: bool) -> bool:
    """Tell whether a sentence, or a row without a label, goes on: an open end, or a long line and a small letter."""
    if worked:
        return ended[-1:] in _UNFINISHED or _last_word(ended) in _UNFINISHED_WORDS
    begins = raw[:1].islower() or raw[:1].isdigit()
    return len(earlier.text) >= _LONG and ended[-1:] not in ".!?:" and begins and not _ITEM.match(raw)


def _last_word(text: str) -> str:
    return text[-12:].rpartition(" ")[2]
