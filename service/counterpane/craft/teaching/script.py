"""The script of a lesson: each step of the sampler from cast-on to bind-off, with its rows and what is then seen."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass, replace

from counterpane.craft.constructions import Plan, Section
from counterpane.craft.pattern import Edge
from counterpane.craft.pattern.borders import written_border
from counterpane.craft.pattern.edges import bind_off, cast_on
from counterpane.craft.pattern.figures import counted
from counterpane.craft.pattern.parts import section_name
from counterpane.craft.pattern.rows import listed_rows, next_side, written_rows
from counterpane.craft.pattern.terms import in_terms
from counterpane.craft.rows.tree import Row
from counterpane.craft.stitches import Terms, Vocabulary
from counterpane.craft.teaching import NO_TIME, Minutes, Slip, Step
from counterpane.craft.teaching.hands import Hand, for_hand
from counterpane.craft.teaching.rows import Stretch, repeat_line, stretches
from counterpane.craft.teaching.seen import Shown, after_row, shown
from counterpane.craft.teaching.slips import slips_of, whens_of_row
from counterpane.craft.teaching.timing import FACTORS, Learners, minutes_of
from counterpane.craft.yarn.pace import hours


@dataclass(frozen=True, slots=True)
class Telling:
    """How a lesson is told: words, terms, hand, for whom, and the mistakes that are known."""

    vocabulary: Vocabulary
    terms: Terms
    hand: Hand
    learners: Learners
    slips: tuple[Slip, ...]

    @property
    def factor(self) -> int:
        """How many times as long the class takes as practised knitters."""
        return FACTORS[self.learners]


@dataclass(frozen=True, slots=True)
class _Told:
    """A step before it has its number; `whens` say which mistakes it can meet."""

    step: Step
    whens: tuple[str, ...]


def steps_of(small: Plan, telling: Telling) -> tuple[Step, ...]:
    """Return the steps of a sampler in the order of the work; a mistake stands at the first step that can meet it."""
    met: set[str] = set()
    steps = []
    for number, told in enumerate(_steps(small, telling), start=1):
        slips = tuple(slip for slip in slips_of(told.whens, telling.slips) if slip.name not in met)
        met.update(slip.name for slip in slips)
        steps.append(_for_hand(replace(told.step, number=number, slips=slips), telling))
    return tuple(steps)


def _steps(small: Plan, telling: Telling) -> Iterator[_Told]:
    slow = hours(small, telling.vocabulary).slow_parts
    yield _cast_on(small, telling)
    for index, section in enumerate(small.sections):
        yield from _part(section, index, section.name in slow, telling, small.counts.selvedge)
    yield _bind_off(small, telling)
    for edge in small.picked:
        rows = listed_rows(edge.border, telling.vocabulary)
        written = written_border(small, edge, rows, telling.vocabulary, telling.terms)
        time = minutes_of(edge.picks, 0, slower=False, factor=telling.factor)
        doing = (written.line, *written.rates)
        yield _Told(_step(f"Pick up along the {edge.edge} edge", doing, (), edge.picks, time), ("pick-up",))
        yield from _part(edge.border, 1, edge.border.name in slow, telling)
        time = minutes_of(edge.border.after, 0, slower=False, factor=telling.factor)
        yield _Told(_step(_ending(telling), (written.bind_off,), (), 0, time), ("bind-off",))


def _step(title: str, doing: tuple[str, ...], seen: tuple[str, ...], on_needle: int, minutes: Minutes) -> Step:
    return Step(0, title, "", None, doing, seen, (), on_needle, minutes)


def _cast_on(small: Plan, telling: Telling) -> _Told:
    edge = cast_on(small, telling.terms)
    time = minutes_of(edge.stitches, 0, slower=False, factor=telling.factor)
    seen = (f"{counted(edge.stitches, 'stitch', 'stitches')} on the needle, all moving freely along it.",)
    return _Told(_step(f"Cast-on: {edge.name}", _said(edge), seen, edge.stitches, time), ("cast-on",))


def _bind_off(small: Plan, telling: Telling) -> _Told:
    edge = bind_off(small, telling.terms)
    time = minutes_of(edge.stitches, 0, slower=False, factor=telling.factor)
    seen = ("The top edge stretches about as far as the rows below it, and no loop is open at its end.",)
    return _Told(_step(f"{_ending(telling)}: {edge.name}", _said(edge), seen, 0, time), ("bind-off",))


def _ending(telling: Telling) -> str:
    return in_terms("Bind-off", telling.terms)


def _said(edge: Edge) -> tuple[str, ...]:
    return (edge.line, *edge.steps, *edge.notes)


def _part(section: Section, index: int, slower: bool, telling: Telling, edge: int = 0) -> Iterator[_Told]:
    listed = listed_rows(section, telling.vocabulary)
    part = shown(section, telling.vocabulary, edge)
    words = [row.text for row in written_rows(listed, section, telling.vocabulary, telling.terms)]
    for stretch in stretches(listed, section.rows):
        doing = repeat_line(stretch) if stretch.again else words[(stretch.first - 1) % len(words)]
        counts = [each.after or 0 for each in part.traced.steps[stretch.first - 1 : stretch.last]]
        time = minutes_of(sum(counts), len(counts), slower=slower, factor=telling.factor)
        seen = (*_on_needle(section, stretch.last, counts[-1]), *after_row(part, stretch.last, telling.hand))
        title = _title(section, index, stretch, listed)
        step = Step(0, title, section.name, (stretch.first, stretch.last), (doing,), seen, (), counts[-1], time)
        yield _Told(step, _whens(part, index, stretch, telling))


def _title(section: Section, index: int, stretch: Stretch, listed: Sequence[Row]) -> str:
    name = section_name(section)
    if stretch.first == 1:
        return f"{name}, set-up: row 1" if index == 0 else f"{name}, the change to it: row 1"
    many = f"rows {stretch.first}–{stretch.last}" if stretch.last > stretch.first else f"row {stretch.first}"
    return f"{name}, {'practice: ' if stretch.again else ''}{many}"


def _on_needle(section: Section, row: int, count: int) -> tuple[str, ...]:
    following = next_side(replace(section, rows=row))
    return (f"{counted(count, 'stitch', 'stitches')} on the needle; the next row is a {following} row.",)


def _whens(part: Shown, index: int, stretch: Stretch, telling: Telling) -> tuple[str, ...]:
    rows = range(stretch.first, stretch.last + 1)
    whens = [when for row in rows for when in whens_of_row(part, row, telling.vocabulary)]
    if stretch.first == 1:
        whens.append("change-of-part" if index else "first-row")
    return tuple(dict.fromkeys(whens))


def _for_hand(step: Step, telling: Telling) -> Step:
    """Return a step with left and right as this hand reads them; rows have neither."""

    def said(text: str) -> str:
        return for_hand(in_terms(text, telling.terms), telling.hand)

    slips = tuple(
        replace(slip, says=said(slip.says), notice=said(slip.notice), correct=said(slip.correct)) for slip in step.slips
    )
    doing = tuple(for_hand(text, telling.hand) for text in step.doing)
    return replace(step, title=for_hand(step.title, telling.hand), doing=doing, slips=slips)


def total_minutes(steps: Sequence[Step]) -> Minutes:
    """Return the minutes of all steps."""
    return sum((step.minutes for step in steps), NO_TIME)
