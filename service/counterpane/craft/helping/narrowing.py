"""Which row a piece is on, narrowed down by what is seen: the next question is the one that separates best."""

from __future__ import annotations

import re
from bisect import bisect_left, bisect_right
from collections import Counter
from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from fractions import Fraction
from typing import Literal

from counterpane.craft.helping.seeing import CAST_ON, LETTERS, Sight

Question = Literal["part", "facing", "needle", "below", "repeats", "length_cm"]
Answer = str | int | Fraction

ORDER: tuple[Question, ...] = ("part", "facing", "needle", "below", "repeats", "length_cm")
"""The questions, that which is asked first of those which separate as well."""

NOT_SURE = "not-sure"
"""The answer that leaves all rows."""

SURE_CM, SURE_SHARE = Fraction(1), Fraction(1, 10)
"""How far a length of the piece on the needle may be off: 1 cm, and a tenth of it; house."""

_GROUP = re.compile(rf"([{''.join(LETTERS.values())}])(\d{{0,3}})")


@dataclass(frozen=True, slots=True)
class Asking:
    """A question, the rows that each of its answers leaves, and the most that one of them may leave.

    The answers stand in the order of the rows; a length has none, since it may be any.
    """

    question: Question
    answers: tuple[tuple[Answer, int], ...]
    worst: int


def answer_of(sight: Sight, question: Question) -> Answer:
    """Return what the piece truly answers; "" where that is not known."""
    answer: Answer = sight.cm if question == "length_cm" else getattr(sight, question)
    return answer


def agrees(sight: Sight, question: Question, answer: Answer) -> bool:
    """Say whether a row may look as it was answered: stitches may be fewer, and a length is never sure."""
    if answer == NOT_SURE:
        return True
    if question == "length_cm":
        return abs(sight.cm - Fraction(answer)) <= _off(Fraction(answer))
    truth = answer_of(sight, question)
    if question in ("needle", "below"):
        return not truth or str(truth).startswith(str(answer))
    return truth == answer


def in_letters(said: str) -> str | None:
    """Return stitches that were said in groups, as in "k2, p2", a letter each; None where they cannot be read."""
    said = re.sub(r"[\s,;]", "", said.lower())
    if said == CAST_ON:
        return said
    if not said or _GROUP.sub("", said):
        return None
    return "".join(letter * int(times or 1) for letter, times in _GROUP.findall(said))


def left_by(sights: Sequence[Sight], seen: Mapping[Question, Answer]) -> tuple[Sight, ...]:
    """Return the rows that look as they were answered to, in order."""
    return tuple(sight for sight in sights if all(agrees(sight, *each) for each in seen.items()))


def next_question(left: Sequence[Sight], asked: Mapping[Question, Answer]) -> Asking | None:
    """Return the question that leaves the fewest rows at its worst answer; None where none separates those left."""
    found = [_asking(left, question) for question in ORDER if question not in asked]
    useful = [each for each in found if each is not None and each.worst < len(left)]
    return min(useful, key=lambda each: each.worst, default=None)


def _asking(left: Sequence[Sight], question: Question) -> Asking | None:
    if question == "length_cm":
        return Asking(question, (), _most_near([sight.cm for sight in left]))
    if question == "repeats" and len({sight.part for sight in left}) > 1:
        return None  # One counts them in the part, and so has to know the part.
    many = Counter(answer_of(sight, question) for sight in left)
    unknown = many.pop("", 0)
    answers = tuple((answer, times + unknown) for answer, times in many.items())
    return Asking(question, answers, max((times for _, times in answers), default=len(left)))


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
