"""Stitches put into the list that is open: what a phrase means by its neighbours, and what it is joined with."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import replace

from counterpane.craft.rows.cables import HELD_OFF, take_held_off
from counterpane.craft.rows.complete import is_numbered, take_complete
from counterpane.craft.rows.cursor import Cursor
from counterpane.craft.rows.fabrics import MOSS, PATTERN, take_across, take_whole_row
from counterpane.craft.rows.forward import forward
from counterpane.craft.rows.frames import CLOSES
from counterpane.craft.rows.gathers import Into, is_single
from counterpane.craft.rows.mistakes import Fault
from counterpane.craft.rows.nest import Nest, plain
from counterpane.craft.rows.phrases import Phrase, take_phrase
from counterpane.craft.rows.reading import Reading
from counterpane.craft.rows.stops import Stop, take_stop
from counterpane.craft.rows.togethers import TOGETHER
from counterpane.craft.rows.tree import Group, Hold, IntoOne, OpenRepeat, Work
from counterpane.craft.rows.units import OVERS, unit_start

_WHOLE_ROW = frozenset({"row", "rnd", "round", "all"})
_SLIPPED_AS_ONE = frozenset({*TOGETHER, "sl2tog"})
_PLAIN = frozenset({"k", "p", "k tbl", "p tbl"})
_BARE: Mapping[str, str] = {"k": "k", "knit": "k", "p": "p", "purl": "p"}
_MAKE = frozenset({"make", "making"})
_CABLE, _PAIR = 4, 2  # Stitches looked back over for what a cable needle holds; house.


def take_plain(cursor: Cursor, nest: Nest) -> bool:
    """Read "k" or "p3" before two stitches as plain, since nothing else can be meant; no move for anything else.

    So a row written out stitch by stitch is read without asking of each what else could follow it.
    """
    word = cursor.word()
    behind = 2 if cursor.word(1) == "," else 1
    if not (_is_plain(word) and _is_plain(cursor.word(behind))):
        return False
    if (then := cursor.word(behind + 1)) != "," and not _is_plain(then):
        return False
    key, place = _BARE.get(word), cursor.place
    nest.put(Work(key, place=place) if key else Work(word[0], int(word[1:]), place=place), bare=key is not None)
    cursor.at += 1
    return True


def _is_plain(word: str) -> bool:
    return word in _BARE or is_numbered(word)


def take_stitch(reading: Reading) -> None:
    """Read one stitch phrase into the open list; no move where none begins."""
    cursor, before = reading.cursor, reading.cursor.at
    complete = take_complete(cursor, reading.lexicon)
    if complete is not None:
        reading.nest.put(*complete)
        return
    if cursor.word().isalpha() or cursor.number() is not None:
        if take_across(cursor):
            place = cursor.run[before].place
            reading.nest.put(plain(Work(PATTERN, place=place), take_stop(cursor) or Stop(rest=0)))
            return
        held = _held(reading) if cursor.word(1) in HELD_OFF else None
        whole = take_held_off(cursor, held) or take_whole_row(cursor)
        if whole is not None:
            reading.nest.put(whole)
            return
    phrase = take_phrase(cursor, reading.lexicon)
    if phrase is not None:
        _place(reading, phrase, before)


def _place(reading: Reading, phrase: Phrase, before: int) -> None:
    """Put a phrase into the list: to a stop, together with its neighbours, or by itself."""
    cursor, node = reading.cursor, phrase.node
    if phrase.keys or phrase.brought:
        phrase = _meant(reading, phrase)
        _doubt(reading, phrase, before)
        node = phrase.node
    if phrase.bare:
        stop = take_stop(cursor) or (Stop(rest=0) if cursor.take_any(_WHOLE_ROW) else None)
        if stop and isinstance(node, Work):
            if not _with_over(reading, node, stop):
                reading.nest.put(plain(node, stop))
            return
    if not (phrase.times and _joined(reading, phrase, phrase.times)):
        _put(reading, phrase, before)


def _with_over(reading: Reading, node: Work, stop: Stop) -> bool:
    """Repeat a decrease with the yarn-over before it: "over and narrow to the end", and the list that a comma joins."""
    nest, items = reading.nest, reading.nest.frame.items
    last = items[-1] if items else None
    paired = isinstance(last, Work) and last.stitch in OVERS
    if not paired or reading.lexicon.vocabulary[node.stitch].uses < _PAIR:
        return False
    joined = nest.frame.anded == len(items)
    nest.put(node)
    if joined:
        nest.fold(len(items) - _PAIR, stop)
    else:
        nest.repeat_list(stop)
    return True


def _put(reading: Reading, phrase: Phrase, start: int) -> None:
    """Put the stitch of a phrase into the open list."""
    nest, node = reading.nest, phrase.node
    together, bare = False, phrase.bare
    if isinstance(node, Work):
        if node.held and bare and node.stitch in _PLAIN:
            node, bare = replace(node, times=_held(reading) or 1), False
        if phrase.into and _gathered(reading, node, phrase.into):
            return
        if node.stitch == "sl" and node.times == 2:
            words = {token.norm for token in reading.cursor.run[start : reading.cursor.at]}
            together = bool(words & _SLIPPED_AS_ONE)
    nest.put(node, bare, together=together)
    if phrase.brought:
        nest.frame.told = len(nest.frame.items) - 1


def _gathered(reading: Reading, node: Work, into: Into) -> bool:
    """Work a stitch into one with those it is joined to: "knit 1 and purl 1 in the next stitch".

    What only commas join is doubtful; "in the same stitch" with no stitch before it means nothing.
    """
    nest = reading.nest
    anded = nest.frame.anded == len(nest.frame.items)
    first = 0 if into.which == "same" else nest.frame.placed
    apart = first > 0 and first == len(nest.frame.items)
    nest.frame.placed = len(nest.frame.items) + 1
    if into.which == "each":
        return _into_each(reading, node, into)
    if apart or not is_single(node) or not into.which or (into.which == "last" and not anded):
        return False
    nest.put(node)
    number = nest.gather_back(into, first)
    if not number and (into.which == "same" or into.loops > 1):
        reading.faults.append(Fault("unknown-term", node.place, into.which))
    elif number and into.which != "same" and not (anded and number == _PAIR):
        readings = ("all that is listed goes into one stitch", "only the last does")
        reading.faults.append(Fault("ambiguous-term", node.place, into.which, readings=readings, fatal=False))
    return True


def _into_each(reading: Reading, node: Work, into: Into) -> bool:
    """Work a stitch, with those that "and" joins to it, into each stitch along the row."""
    nest = reading.nest
    anded = nest.frame.anded == len(nest.frame.items)
    nest.put(node)
    if node.times != 1 or reading.lexicon.vocabulary[node.stitch].uses != 1:
        reading.faults.append(Fault("unknown-term", node.place, into.which))
        return True
    gathered = anded and nest.gather_back(into)
    stop = take_stop(reading.cursor) or Stop(rest=0)
    if gathered:
        nest.fold(len(nest.frame.items) - 1, stop)
    else:
        nest.frame.items[-1] = plain(node, stop)
    return True


def _held(reading: Reading) -> int | None:
    """Return how many stitches were last put on a cable needle in this list; None where none were."""
    items = reading.nest.frame.items[-_CABLE:]
    return next((node.times for node in reversed(items) if isinstance(node, Hold)), None)


def _joined(reading: Reading, phrase: Phrase, times: int) -> bool:
    """Join a stitch said to be worked so often with what belongs to it, and tell whether anything does.

    "Make 1 and knit 2 together twice" counts both, and so does "throw the wool forward, knit 2 together twice".
    """
    frame, node = reading.nest.frame, phrase.node
    end = len(frame.items)
    paired = end > 0 and frame.anded == end and _of_pair(reading)
    if not isinstance(node, Work) or not end or not (paired or frame.told == end - 1):
        return False
    start = unit_start(frame.items, end) if paired else end - 1
    reading.nest.put(replace(node, times=node.times // times))
    reading.nest.fold(start, Stop(times=times))
    return True


def _of_pair(reading: Reading) -> bool:
    """Tell whether the "and" before a stitch joins it alone to the one before, and not to a longer list."""
    frame, at = reading.nest.frame, reading.and_at
    comma = at > 0 and reading.cursor.run[at - 1].kind == "pause"
    whole = frame.opener in CLOSES and unit_start(frame.items, len(frame.items)) == 0
    return not comma or whole


def _meant(reading: Reading, phrase: Phrase) -> Phrase:
    """Decide what words of several meanings are here, by the stitches around them."""
    node = phrase.node
    over = (reading.old or reading.spelt) and reading.cursor.word() != "by"
    if over and isinstance(node, Work) and node.stitch == "m1" and phrase.word in _MAKE:
        phrase = phrase._replace(node=replace(node, stitch="yo"), brought=True, keys=())
    if isinstance(node, Work) and phrase.word in _MAKE and node.stitch == "yo" and node.times > 1:
        readings = ("so many yarn-overs", "one yarn-over wrapped so often")
        reading.faults.append(Fault("ambiguous-term", node.place, phrase.word, readings=readings, fatal=False))
    return _brought_forward(reading, phrase) if "yo" in phrase.keys else phrase


def _brought_forward(reading: Reading, phrase: Phrase) -> Phrase:
    """Decide whether a yarn brought forward makes a loop."""
    if not isinstance(phrase.node, Work) or phrase.node.times != 1:
        return phrase
    purled = _purled(reading) if phrase.brought else None
    found = forward(reading.cursor, phrase.word, phrase.keys, reading.terms, purled)
    if found is None or found[0] not in reading.lexicon.vocabulary.stitches:
        return phrase
    key, doubtful = found
    if doubtful:
        readings = ("yarn over (a stitch more)", "yarn to front (no stitch)")
        fault = Fault("ambiguous-term", phrase.node.place, phrase.word, readings=readings, fatal=False)
        reading.faults.append(fault)
    return phrase._replace(node=replace(phrase.node, stitch=key), keys=(key,))


def _purled(reading: Reading) -> bool:
    """Tell whether the stitch before shows a purl, so that the yarn is in front."""
    items = reading.nest.frame.items
    last = items[-1] if items else None
    while isinstance(last, Group | OpenRepeat | IntoOne) and last.parts:
        last = last.parts[-1]
    return isinstance(last, Work) and reading.lexicon.vocabulary[last.stitch].face == "purl"


def _doubt(reading: Reading, phrase: Phrase, start: int) -> None:
    """Note a word with several meanings in the trade; what is printed may settle it."""
    if not phrase.keys or not isinstance(phrase.node, Work):
        return
    known = reading.lexicon.vocabulary.stitches
    word = phrase.word
    readings = tuple(meaning for key in phrase.keys if key in known for meaning in known[key].ambiguous)
    if phrase.node.stitch == PATTERN:
        words = [token.norm for token in reading.cursor.run[start : reading.cursor.at]]
        readings, word = (MOSS, "moss") if "moss" in words and reading.terms != "uk" else (readings, word)
    if readings:
        fault = Fault("ambiguous-term", phrase.node.place, word, readings=readings, fatal=False)
        reading.faults.append(fault)
