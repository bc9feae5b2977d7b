"""Brackets, stars and the words that say what becomes of them: "3 times", "into next st", "rep from * to end"."""

from __future__ import annotations

from collections.abc import Sequence

from counterpane.craft.rows.asides import aside_at
from counterpane.craft.rows.cables import FROM_CN
from counterpane.craft.rows.commands import repeat_this
from counterpane.craft.rows.cursor import Cursor
from counterpane.craft.rows.mistakes import Fault
from counterpane.craft.rows.nest import Nest, from_cable_needle
from counterpane.craft.rows.phrasebook import Phrasebook, phrases, spelt, ways
from counterpane.craft.rows.stops import Stop, take_count, take_stop
from counterpane.craft.rows.tree import Group, IntoOne, Node, Place
from counterpane.craft.rows.words import Token

REPEAT = frozenset({"rep", "reps", "repeat", "repeating"})
_EACH = 0
_NEXT_ST = spelt("next|same|first|last|foll|following|centre|center|marked", "st|stitch|loop")
_DOUBLE = "double yo|double yarn over|yo twice|2 loops"
_INTO: Phrasebook[int] = Phrasebook(
    [
        *((way, 1) for way in ways("|all|all of these|all worked", "in|into", "|the", "|".join(_NEXT_ST))),
        *((way, 1) for way in ways("|all", "in|into", "1|a single", "st|stitch|loop")),
        *((way, 1) for way in ways("|all", "in|into", "|next|the|the next", "yo|yarn over|yfwd")),
        *((way, 2) for way in ways("|all", "in|into", "|next|the|the next", _DOUBLE)),
        *((way, _EACH) for way in ways("|all", "in|into", "each|every", "st|stitch|loop")),
    ]
)
_FROM_START = phrases(*ways("from", "|the", "beg|beginning|start", "|of row|of the row|of rnd|of the rnd|of round"))
_STARS = phrases(
    *ways("|from|between", "|the", "star|stars|asterisk|asterisks"), *ways("|the", "part", "between", "|the", "stars")
)


def _stop(cursor: Cursor) -> Stop | None:
    """Read how far or how often."""
    return take_stop(cursor) or take_count(cursor)


# -- brackets


def close_bracket(cursor: Cursor, nest: Nest) -> None:
    """Close the innermost bracket, and put it into the frame around it by the words that follow."""
    token = cursor.token
    cursor.at += 1
    frame = nest.close_bracket(token.text, token.place)
    if frame is not None and frame.items:
        for node in _behind_bracket(cursor, nest, tuple(frame.items), frame.place):
            nest.put(node)


def _behind_bracket(cursor: Cursor, nest: Nest, parts: tuple[Node, ...], place: Place) -> tuple[Node, ...]:
    """Read "3 times", "into next st", "to end", "from cn" behind a bracket."""
    if cursor.take(FROM_CN):
        parts = from_cable_needle(parts)
    times = _times(cursor)
    if times is not None:
        parts = (Group(parts, times, place=place),)
    loops = cursor.take(_INTO)
    if loops is not None:
        parts = (IntoOne(parts, loops or 1, place),)
        again = _times(cursor)
        parts = parts if again is None else (Group(parts, again, place=place),)
    stop = _bracket_stop(cursor) if times is None else None
    if loops == _EACH and stop is None:
        stop = Stop(rest=0)
    return parts if stop is None else (nest.repeated(parts, stop, place),)


def _times(cursor: Cursor) -> int | None:
    """Read "3 times", "3 times more" or "3 times in all" behind a bracket: the number in all."""
    count = take_count(cursor)
    if count is None or count.times is None:
        return None
    return count.times - 1 if count.doubtful else count.times


def _bracket_stop(cursor: Cursor) -> Stop | None:
    """Read "to end" or "3 times" behind a bracket and the word repeat, or "to end" without it."""
    before = cursor.at
    _skip_pauses(cursor)
    if cursor.take_any(REPEAT) and cursor.word() != "from":
        stop = _stop(cursor) or (Stop(rest=0) if cursor.pausing else None)
    else:
        cursor.at = before
        stop = take_stop(cursor)
    if stop is None:
        cursor.at = before
    return stop


def _skip_pauses(cursor: Cursor) -> None:
    while cursor and cursor.token.kind == "pause":
        cursor.at += 1


# -- stars


def letters_named(run: Sequence[Token]) -> frozenset[str]:
    """Return the letters in brackets that a row repeats from: "repeat from (a)"."""
    return frozenset(
        run[at + 2].norm
        for at, token in enumerate(run[:-3])
        if token.norm in ("from", "to", "between") and _is_letter(run, at + 1)
    )


def _is_letter(run: Sequence[Token], at: int) -> bool:
    """Tell whether a single letter stands in brackets here."""
    return (
        at + 2 < len(run)
        and run[at].kind == "open"
        and len(run[at + 1].norm) == 1
        and run[at + 1].norm.isalpha()
        and run[at + 2].kind == "close"
    )


def letter_mark(cursor: Cursor, nest: Nest, named: frozenset[str]) -> bool:
    """Open a repeat at a letter in brackets that is named further on: "(a) pearl 1 … repeat from (a)"."""
    if not named or cursor.word(1) not in named or not _is_letter(cursor.run, cursor.at):
        return False
    nest.open(f"({cursor.word(1)})", cursor.place)
    cursor.at += 3
    return True


def _take_mark(cursor: Cursor) -> str | None:
    """Move past a star or a letter in brackets and return it."""
    if cursor and cursor.token.kind == "star":
        cursor.at += 1
        return cursor.word(-1)
    if _is_letter(cursor.run, cursor.at):
        cursor.at += 3
        return f"({cursor.word(-2)})"
    return None


def star(cursor: Cursor, nest: Nest) -> None:
    """Open a repeat at a star, or end one at the second of a pair."""
    mark, place = cursor.word(), cursor.place
    cursor.at += 1
    if nest.frame.opener == mark and nest.frame.items:
        frame = nest.frames.pop()
        nest.end_pair(mark, tuple(frame.items), frame.place, _behind_pair(cursor))
    else:
        nest.open(mark, place)


def _behind_pair(cursor: Cursor) -> Stop | None:
    """Read what follows the second star: "rep between *s to end", "rep from * to * to last st", "(3 times)"."""
    before = cursor.at
    _skip_pauses(cursor)
    if cursor.take_any(REPEAT) or (cursor.take_word("work") and cursor and cursor.token.kind == "star"):
        named_star(cursor)
        return _stop(cursor)
    cursor.at = before
    if cursor.word() == "(" and cursor.word(2) in ("times", "x") and cursor.word(3) == ")":
        cursor.at += 4
        return Stop(times=cursor.number(-3))
    times = _times(cursor)
    return take_stop(cursor) if times is None else Stop(times=times)


def repeat_clause(cursor: Cursor, nest: Nest) -> None:
    """Read a repeat clause: "rep from * to last 3 sts", "rep to end", "repeat"."""
    place = cursor.place
    cursor.at += 1
    if repeat_this(cursor, nest):
        return
    if _pair_follows(cursor, nest):
        return
    cursor.take_word("the")
    if cursor.take(_FROM_START):
        nest.repeat_list(_stop(cursor) or Stop(rest=0))
    elif (named := named_star(cursor)) is not None:
        repeat_from(cursor, nest, place, *named)
    elif nest.frame.is_star and nest.frame.items:
        nest.end_star(len(nest.frames) - 1, _stop(cursor), place)
    elif cursor.word() == "from" and cursor.at + 1 < len(cursor.run):
        cursor.at += 2
        nest.faults.append(Fault("repeat-without-start", place, cursor.word(-1)))
    else:
        # A plain "repeat" goes on for as long as the stitches named behind it leave room.
        nest.repeat_list(_stop(cursor) or Stop(rest=None if cursor.has_words else 0))


def _pair_follows(cursor: Cursor, nest: Nest) -> bool:
    """Tell whether what is to be repeated stands behind: "repeat *k2, p2* across", "rep (p1, k1) 3 times"."""
    if cursor and cursor.token.kind == "open" and not _is_letter(cursor.run, cursor.at):
        return aside_at(cursor) is None and cursor.number(1) is None and cursor.word(1) not in ("once", "twice")
    mark = cursor.token.norm if cursor and cursor.token.kind == "star" else None
    if mark is None or nest.depth_of(mark) is not None or mark in nest.frame.pairs:
        return False
    return any(cursor.run[at].norm == mark for at in range(cursor.at + 1, len(cursor.run)))


def bracketed_repeat(cursor: Cursor, nest: Nest) -> bool:
    """Read "(repeat from *)" behind a star, whose brackets hold nothing to work."""
    if cursor.word(1) not in REPEAT or not nest.frame.is_star or cursor.word(2) not in ("from", nest.frame.opener):
        return False
    cursor.at += 1
    repeat_clause(cursor, nest)
    if cursor and cursor.token.kind == "close":
        cursor.at += 1
    return True


def repeat_from(cursor: Cursor, nest: Nest, place: Place, mark: str, until: str | None) -> None:
    """Repeat from the star that is named, or between two, as far or as often as the next words say."""
    stop = _stop(cursor)
    depth = nest.depth_of(mark)
    if depth is not None and until not in (None, mark) and nest.depth_of(until or "") is not None:
        nest.end_at_other_mark(depth, stop)
    elif depth is not None:
        nest.end_star(depth, stop, place)
    elif not nest.repeat_pair(mark, stop):
        nest.faults.append(Fault("repeat-without-start", place, mark))


def named_star(cursor: Cursor) -> tuple[str, str | None] | None:
    """Move past "from *", "from * to **", "between *s", "*": the star named, and the one it goes to."""
    before = cursor.at
    if cursor.take(_STARS):
        return "stars", None
    cursor.take_word("from", "between")
    cursor.take_word("the", "first")
    mark = _take_mark(cursor)
    if mark is None:
        cursor.at = before
        return None
    until: str | None = None
    cursor.take_word("'")
    cursor.take_word("s")
    if cursor.word() in ("to", "and", "-"):
        behind = cursor.at
        cursor.at += 1
        until = _take_mark(cursor)
        if until is None:
            cursor.at = behind
    return mark, until
