"""Which row a piece is on, narrowed down by what is seen: the next question is the one that separates best."""

from __future__ import annotations

from bisect import bisect_left, bisect_right
from collections import Counter
from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from fractions import Fraction
from typing import Literal

from counterpane.craft.helping.seeing import Sight
from counterpane.craft.helping.under import Under

Question = Literal["part", "needle", "repeats", "length_cm"]
Answer = str | int | Fraction | Under

ORDER: tuple[Question, ...] = ("part", "needle", "repeats", "length_cm")
"""The questions, that which is asked first of those which separate as well; a length, never exact, comes last."""

NOT_SURE = "not-sure"
"""The answer that leaves all rows."""

SURE_CM, SURE_SHARE = Fraction(1), Fraction(1, 10)
"""How far a length of the piece on the needle may be off: 1 cm, and a tenth of it; house."""


@dataclass(frozen=True, slots=True)
class Asking:
    """A question, the rows that each of its answers leaves, and the most that one of them may leave.

    The answers stand in the order of the rows; a length has none, since it may be any.
    """

    question: Question
    answers: tuple[tuple[Answer, int], ...]
    worst: int


def answer_of(sight: Sight, question: Question) -> Answer:
    """Return what the piece truly answers."""
    answer: Answer = sight.cm if question == "length_cm" else getattr(sight, question)
    return answer


def agrees(sight: Sight, question: Question, answer: Answer) -> bool:
    """Say whether a row may look as it was answered: stitches may be fewer, and a length is never sure."""
    if answer == NOT_SURE:
        return True
    if isinstance(answer, Under):
        return sight.needle.shows(answer)
    if question == "length_cm":
        return abs(sight.cm - Fraction(answer)) <= _off(Fraction(answer))
    return answer_of(sight, question) == answer


def left_by(sights: Sequence[Sight], seen: Mapping[Question, Answer]) -> tuple[Sight, ...]:
    """Return the rows that look as they were answered to, in order."""
    return tuple(sight for sight in sights if all(agrees(sight, *each) for each in seen.items()))


def next_question(left: Sequence[Sight], asked: Mapping[Question, Answer]) -> Asking | None:
    """Return the question that leaves the fewest rows at its worst answer; None where none separates those left.

    A length is asked where no other question separates them.
    """
    found = [_asking(left, question) for question in ORDER if question not in asked]
    useful = [each for each in found if each is not None and each.worst < len(left)]
    return min(useful, key=lambda each: (each.question == "length_cm", each.worst), default=None)


def _asking(left: Sequence[Sight], question: Question) -> Asking | None:
    if question == "length_cm":
        return Asking(question, (), _most_near([sight.cm for sight in left]))
    if question == "repeats" and len({sight.part for sight in left}) > 1:
        return None  # One counts them in the part, and so has to know the part.
    many = Counter(answer_of(sight, question) for sight in left)
    unknown = sum(not sight.needle.known for sight in left) if question == "needle" else 0
    answers = tuple((answer, times + unknown) for answer, times in many.items() if _tells(answer))
    return Asking(question, answers, max((times for _, times in answers), default=len(left)))


def _tells(answer: Answer) -> bool:
    return not isinstance(answer, Under) or answer.known


def _most_near(lengths: Sequence[Fraction]) -> int:
    """Return the most of these rising lengths that one of them, answered, would leave."""
    return max(
        (bisect_right(lengths, one + _off(one)) - bisect_left(lengths, one - _off(one)) for one in lengths), default=0
    )


def _off(cm: Fraction) -> Fraction:
    """Return how far a length may be off."""
    return SURE_CM + SURE_SHARE * cm


def alike(one: Sight, other: Sight) -> bool:
    """Say whether two rows answer every question alike but that of the length."""
    return all(answer_of(one, question) == answer_of(other, question) for question in ORDER if question != "length_cm")
