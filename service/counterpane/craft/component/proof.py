"""Whether a component proves: its rows are read, fit and return, its examples come out, its safety notes are honest."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from functools import lru_cache

from counterpane.craft.component.derived import KEPT, Derived, DerivedVersion, derive, say_counts, sides_of
from counterpane.craft.component.strands import most_opened, most_slipped
from counterpane.craft.component.values import Component, Example, Measure, Parameter
from counterpane.craft.counts import judge, work
from counterpane.craft.rows.tree import Place
from counterpane.craft.stitches import Vocabulary

WORKED_WITHOUT_ROWS = ("cast-on", "bind-off")


@dataclass(frozen=True, slots=True)
class Problem:
    """One thing that keeps a component out: where in its content, what, and the next step.

    `pointer` is a JSON pointer; `place` the line and column inside the rows there, None where there is none; `rule` the
    slug of the reading or counting rule that explains it, None for what no such rule covers.
    """

    pointer: str
    message: str
    step: str
    place: Place | None = None
    rule: str | None = None


@lru_cache(maxsize=KEPT)
def prove(component: Component, vocabulary: Vocabulary) -> tuple[Problem, ...]:
    """Return what keeps a component from being kept: nothing where it proves."""
    if component.kind in WORKED_WITHOUT_ROWS:
        return (*_operation(component), *_counts_of_edge(component))
    if component.operation is not None:
        return (Problem("/operation", f"A {component.kind} is worked in rows.", "Give versions with rows instead."),)
    if not component.versions:
        return (Problem("/versions", f"A {component.kind} needs rows.", "Give at least one version with its rows."),)
    derived = derive(component, vocabulary)
    fitting = [problem for place, version in enumerate(derived.versions) for problem in _rows(version, place)]
    if fitting:
        return tuple(fitting)
    examples = [each for place, e in enumerate(component.examples) for each in _example(e, place, derived, vocabulary)]
    allowed = [each for place, p in enumerate(component.parameters) for each in _parameter(p, place, derived)]
    return (*examples, *allowed, *_safety(component, derived))


def _operation(component: Component) -> Iterator[Problem]:
    if component.versions:
        yield Problem("/versions", f"A {component.kind} has no rows.", "Say it in the steps of an operation.")
    if component.operation is None or not component.operation.steps:
        yield Problem("/operation", f"A {component.kind} needs steps.", "Give an operation with at least one step.")


def _counts_of_edge(component: Component) -> Iterator[Problem]:
    """Check the examples of a cast-on or bind-off: none after a cast-on, and no stitch left after a bind-off."""
    left = () if component.kind == "cast-on" else (0,)
    least = component.operation.least if component.operation else 1
    for place, example in enumerate(component.examples):
        if example.stitches < least or example.after not in ((), left):
            message = f"The example of {example.stitches} stitches and {list(example.after)} after it does not hold."
            yield Problem(
                f"/examples/{place}", message, f"Write at least {least} stitches, and {list(left)} after them."
            )


def _rows(version: DerivedVersion, place: int) -> Iterator[Problem]:
    pointer = f"/versions/{place}/rows"
    for fault in version.text.faults:
        if fault.fatal:
            unread = repr(fault.word) if fault.word else "The row"
            message = f"{unread} cannot be read: {fault.rule.replace('-', ' ')}."
            step = f"Probably meant: {fault.likely}." if fault.likely else "Rewrite it in the terms of the trade."
            yield Problem(pointer, message, step, fault.place, fault.rule)
    if not version.rows:
        yield Problem(pointer, "There is no row.", "Write rows such as: Row 1 (RS): knit.", rule="no-rows")
    elif version.casts_on:
        yield Problem(pointer, "A part of a blanket has no cast-on of its own.", "Leave the cast-on line out.")
    elif version.repeats_part:
        yield Problem(pointer, "A repeat line works some of the rows again.", "Write out every row of the repeat.")
    elif all(row.readable for row in version.rows):
        yield from _fit(version, pointer)


def _fit(version: DerivedVersion, pointer: str) -> Iterator[Problem]:
    misfit = version.chain.misfit
    if misfit is not None:
        label = version.rows[misfit.row].label
        message = f"No number of stitches works: row {label} does not fit the rows before it."
        yield Problem(pointer, message, f"Change row {label}, or the one before it.", misfit.place, misfit.slug)
    elif not version.starts:
        yield Problem(pointer, "The counts of these rows cannot be derived.", "Leave out turns and markers.")
    elif version.drift != 0:
        gained = "a number of stitches that depends on the width" if version.drift is None else f"{version.drift:+d}"
        message = f"The rows do not return to their start: one pass changes the count by {gained}."
        yield Problem(
            pointer, message, "Let the last row leave as many stitches as the first one takes.", None, "count-drifts"
        )
    yield from _stated(version, pointer)


def _stated(version: DerivedVersion, pointer: str) -> Iterator[Problem]:
    """Judge the multiple that stands with the rows, where one does."""
    stated = version.text.multiple
    if stated and version.starts and all(judge(stated.of, stated.plus, true) == "wrong" for true in version.starts):
        counts = " or ".join(map(say_counts, version.starts))
        message = f"The rows promise a {stated.said} and take {counts}."
        yield Problem(pointer, message, f"State {counts}, or leave it out.", stated.place, "stated-multiple-wrong")


def _example(example: Example, place: int, derived: Derived, vocabulary: Vocabulary) -> Iterator[Problem]:
    pointer = f"/examples/{place}"
    if not 0 <= example.version < len(derived.versions):
        yield Problem(f"{pointer}/version", f"There is no version {example.version}.", "Count the versions from 0.")
        return
    version = derived.versions[example.version]
    passes, over = divmod(len(example.after), version.row_repeat)
    if over or not passes:
        message = f"{len(example.after)} counts stand for {version.row_repeat} rows."
        yield Problem(f"{pointer}/after", message, "Give one count for each row, of one pass or of several.")
    elif not version.admits(example.stitches):
        counts = " or ".join(map(say_counts, version.starts))
        yield Problem(f"{pointer}/stitches", f"{example.stitches} stitches do not fit.", f"The rows take {counts}.")
    elif (after := _after(version, example.stitches, vocabulary) * passes) != example.after:
        message = f"The counts after the rows are {_list(after)}, and the example says {_list(example.after)}."
        yield Problem(f"{pointer}/after", message, "Correct the example, or the rows.")


def _after(version: DerivedVersion, stitches: int, vocabulary: Vocabulary) -> tuple[int, ...]:
    steps = work([row.parts for row in version.rows], stitches, vocabulary, sides_of(version.rows))
    return tuple(step.after for step in steps if step.after is not None)


def _list(counts: tuple[int, ...]) -> str:
    return ", ".join(map(str, counts))


def _parameter(parameter: Parameter, place: int, derived: Derived) -> Iterator[Problem]:
    pointer = f"/parameters/{place}"
    most = parameter.default if parameter.most is None else parameter.most
    if parameter.least < 1 or parameter.step < 1 or not parameter.least <= parameter.default <= most:
        message = f"The default {parameter.default} does not lie between {parameter.least} and {most}."
        yield Problem(f"{pointer}/default", message, "Give least, default and most in rising order, all 1 or more.")
    elif (parameter.default - parameter.least) % parameter.step:
        message = (
            f"The default {parameter.default} cannot be reached from {parameter.least} in steps of {parameter.step}."
        )
        yield Problem(f"{pointer}/default", message, "Change the step, or the default.")
    elif parameter.name == "stitches" and (bad := _unfit(parameter, derived)) is not None:
        yield Problem(
            pointer, f"It allows {bad} stitches, over which the rows do not work.", f"They take {derived.said}."
        )


def _unfit(parameter: Parameter, derived: Derived) -> int | None:
    """Return the first allowed number of stitches, up to the default, over which the rows do not work."""
    allowed = range(parameter.least, parameter.default + 1, parameter.step)
    return next((value for value in allowed if not derived.admits(value)), None)


def _safety(component: Component, derived: Derived) -> Iterator[Problem]:
    opened = max(most_opened(version) for version in derived.versions)
    slipped = max(most_slipped(version) for version in derived.versions)
    for name, most, unit, seen in (
        ("openings", opened, "yarn-over", "yarn-overs side by side"),
        ("floats", slipped, "stitches", "slipped stitches side by side, with the yarn past them"),
    ):
        note = getattr(component.safety, name)
        if note == "none" and most:
            step = f'Write {{"value": "{most}", "unit": "{unit}"}}, or "not known".'
            yield Problem(f"/safety/{name}", f'The note says "none", and the rows have up to {most} {seen}.', step)
        elif isinstance(note, Measure) and note.unit == unit and note.value != str(most):
            yield Problem(
                f"/safety/{name}/value", f"The rows have {most} {seen}, the note says {note.value}.", "Correct it."
            )
