"""A lesson in the order in which a teacher needs it, as blocks for text, Markdown and HTML, and as JSON values."""

from __future__ import annotations

import json
from collections.abc import Callable, Iterator, Mapping, Sequence
from dataclasses import asdict
from typing import Any

from counterpane.craft.drawing import Picture
from counterpane.craft.measures import half_up, shown
from counterpane.craft.teaching import Kit, Lesson, Minutes, Session, Slip, Step, StoppedPiece
from counterpane.craft.yarn import Spread
from counterpane.press.blocks import Block, Figure, Heading, Items, Orders, Paragraph
from counterpane.press.cautions import cautions_blocks
from counterpane.press.html import html_of
from counterpane.press.markdown import markdown_of
from counterpane.press.text import text_of

Pictures = Sequence[Picture]
UNSOURCED = "common practice, no source"


def as_text(lesson: Lesson, pictures: Pictures = ()) -> bytes:
    """Return a lesson as text in UTF-8; pictures have no place in it."""
    return text_of(page(lesson)).encode()


def as_markdown(lesson: Lesson, pictures: Pictures = ()) -> bytes:
    """Return a lesson as Markdown in UTF-8; pictures have no place in it."""
    return markdown_of(page(lesson)).encode()


def as_html(lesson: Lesson, pictures: Pictures = ()) -> bytes:
    """Return a lesson as a whole page, its pictures at the end."""
    return html_of((*page(lesson), *map(Figure, pictures)), lesson.title, lesson.terms)


def as_json(lesson: Lesson, pictures: Pictures = ()) -> bytes:
    """Return a lesson as JSON in UTF-8; pictures have no place in it."""
    return json.dumps({"lesson": as_data(lesson)}, ensure_ascii=False).encode()


FORMS: Mapping[str, Callable[[Lesson, Pictures], bytes]] = {
    "text": as_text,
    "markdown": as_markdown,
    "html": as_html,
    "json": as_json,
}


def page(lesson: Lesson) -> Iterator[Block]:
    """Give the blocks of a lesson in reading order."""
    yield Heading(f"{lesson.title}: a lesson", 1)
    yield Items(lesson.summary)
    if lesson.cautions.says_stop:
        yield Paragraph("Safety says stop: read the cautions at the end before you begin.")
    yield Heading("Before and after every class")
    yield Items((*lesson.always, f"All of this is {UNSOURCED}."))
    yield Heading("Left-handed" if lesson.hand == "right" else "For left-handers who work mirrored")
    yield Items((*lesson.hands, f"All of this is {UNSOURCED}."))
    yield from _time(lesson)
    yield from _kit(lesson.kit)
    yield Heading("The steps")
    yield Paragraph(f"What goes wrong in a class is {UNSOURCED}, where no source stands beside it.")
    for step in lesson.steps:
        yield from _step(step)
    yield Heading("Cautions")
    yield from cautions_blocks(lesson.cautions)


def _time(lesson: Lesson) -> Iterator[Block]:
    yield Heading("Time")
    yield Paragraph(f"All steps: {minutes_said(lesson.minutes)} of knitting. {lesson.pace}")
    yield Items(tuple(_session(each, lesson.session_minutes) for each in lesson.sessions))


def _session(session: Session, minutes: int) -> str:
    first, last = session.steps
    steps = f"step {first}" if first == last else f"steps {first} to {last}"
    told = f"Session {session.number}: {steps}, {minutes_said(session.minutes)}."
    if session.overlong:
        return f"{told} It may take longer than {minutes} minutes: stop after any row, and write its number down."
    return told


def _kit(kit: Kit) -> Iterator[Block]:
    yield Heading("Pieces to prepare")
    yield Items(tuple(map(_piece, kit.pieces)))
    yield Items(kit.needles)
    yield Paragraph(f"Yarn for all pieces: {_yarn(kit.metres, kit.grams)}. Each has two tails. Basis: {kit.basis}.")


def _piece(piece: StoppedPiece) -> str:
    return (
        f"{piece.letter}, {piece.stops}: shows {piece.why}. Caption: {piece.caption} "
        f"Yarn: {_yarn(piece.metres, piece.grams)}."
    )


def _yarn(metres: Spread | None, grams: Spread | None) -> str:
    told = [f"{_range(each)} {unit}" for each, unit in ((metres, "m"), (grams, "g")) if each is not None]
    return ", ".join(told) if told else "not known"


def _range(spread: Spread) -> str:
    ends = spread.ordered()
    return f"{shown(ends.low)} to {shown(ends.high)}"


def _step(step: Step) -> Iterator[Block]:
    yield Heading(f"{step.number}. {step.title} ({minutes_said(step.minutes)})", 3)
    yield Orders(step.doing[:1])
    yield Items(step.doing[1:])
    if step.seen:
        yield Paragraph("What the class sees")
        yield Items(step.seen)
    if step.slips:
        yield Paragraph("What goes wrong here")
        yield Items(tuple(map(_slip, step.slips)))


def _slip(slip: Slip) -> str:
    source = "" if slip.source == UNSOURCED else f" Source: {slip.source}."
    return f"{slip.says} How to notice: {slip.notice} To correct: {slip.correct}{source}"


def minutes_said(minutes: Minutes) -> str:
    """Say minutes in whole ones, half up."""
    low, high = int(half_up(minutes.quick)), max(1, int(half_up(minutes.slow)))
    if low < 1:
        return f"up to {high} minute{'' if high == 1 else 's'}"
    return f"about {high} minute{'' if high == 1 else 's'}" if low == high else f"{low} to {high} minutes"


def as_data(lesson: Lesson) -> dict[str, Any]:
    """Return a lesson as JSON values: minutes, metres and grams to 0.1, half up, the lower end first."""
    return {
        "title": lesson.title,
        "terms": lesson.terms,
        "hand": lesson.hand,
        "summary": list(lesson.summary),
        "steps": [_step_data(step) for step in lesson.steps],
        "minutes": _minutes_data(lesson.minutes),
        "pace": lesson.pace,
        "session_minutes": lesson.session_minutes,
        "sessions": [_session_data(session) for session in lesson.sessions],
        "kit": _kit_data(lesson.kit),
        "hands": list(lesson.hands),
        "always": list(lesson.always),
        "safety": dict(lesson.cautions.record),
    }


def _step_data(step: Step) -> dict[str, Any]:
    return {
        "number": step.number,
        "title": step.title,
        "part": step.part or None,
        "rows": list(step.rows) if step.rows else None,
        "doing": list(step.doing),
        "seen": list(step.seen),
        "mistakes": [asdict(slip) for slip in step.slips],
        "on_needle": step.on_needle,
        "minutes": _minutes_data(step.minutes),
    }


def _session_data(session: Session) -> dict[str, Any]:
    told = {"number": session.number, "steps": list(session.steps), "overlong": session.overlong}
    return told | {"minutes": _minutes_data(session.minutes)}


def _kit_data(kit: Kit) -> dict[str, Any]:
    pieces = [
        {
            "letter": piece.letter,
            "stops": piece.stops,
            "why": piece.why,
            "caption": piece.caption,
            "on_needle": piece.on_needle,
            "metres": _ends(piece.metres),
            "grams": _ends(piece.grams),
        }
        for piece in kit.pieces
    ]
    sums = {"metres": _ends(kit.metres), "grams": _ends(kit.grams), "basis": kit.basis}
    return {"pieces": pieces, "needles": list(kit.needles)} | sums


def _minutes_data(minutes: Minutes) -> list[float]:
    return [float(shown(minutes.quick)), float(shown(minutes.slow))]


def _ends(spread: Spread | None) -> list[float] | None:
    if spread is None:
        return None
    ends = spread.ordered()
    return [float(shown(ends.low)), float(shown(ends.high))]
