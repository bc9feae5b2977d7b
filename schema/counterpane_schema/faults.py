"""What a schema refuses, flattened: a JSON pointer, a sentence, and the nearest name where one was misspelt."""

from __future__ import annotations

import difflib
from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from typing import Any

from marshmallow import Schema, fields

from counterpane_schema.fields import Either
from counterpane_schema.forms import Closed

MISSING = "This is missing, and is needed."
MOST_LETTERS = 100  # Longer names are cut before they are compared, which takes time with the square of the length.


@dataclass(frozen=True, slots=True)
class Fault:
    """One thing that does not fit: where (RFC 6901), what, and the next step where one can be named."""

    pointer: str
    message: str
    hint: str = ""


def faults_of(schema: Schema, data: Any) -> tuple[Fault, ...]:
    """Return all that the schema refuses in the data, in the order of its fields; nothing where the data fit."""
    return tuple(_flat(schema, schema.validate(data), ()))


def _flat(schema: Schema, messages: Any, steps: tuple[str, ...]) -> Iterator[Fault]:
    if isinstance(messages, dict):
        for name, inner in messages.items():
            yield from _flat(schema, inner, steps if name == "_schema" else (*steps, str(name)))
    elif isinstance(messages, list):
        for message in messages:
            yield from _flat(schema, message, steps)
    else:
        yield _fault(schema, str(messages), steps)


def _fault(schema: Schema, message: str, steps: tuple[str, ...]) -> Fault:
    if message != fields.Field.default_error_messages["required"]:
        return Fault(_pointer(steps), message, _nearest(schema, message, steps))
    inner = sorted(names_at(schema, steps))
    return Fault(_pointer(steps), MISSING, f"It may hold: {', '.join(inner)}." if inner else "")


def _pointer(steps: Sequence[str]) -> str:
    return "".join("/" + step.replace("~", "~0").replace("/", "~1") for step in steps)


def _nearest(schema: Schema, message: str, steps: tuple[str, ...]) -> str:
    if message != Closed.error_messages["unknown"] or not steps:
        return ""
    known = sorted(names_at(schema, steps[:-1]))
    near = difflib.get_close_matches(steps[-1][:MOST_LETTERS], known, n=1, cutoff=0.6)
    if near and steps[-1] in {each.replace("_cm", "_mm") for each in near}:
        return f"Probably meant: {near[0]}, in centimetres: 750 mm are 75."
    meant = [name for name in known if name.startswith(f"{steps[-1]}_")] or near
    return f"Probably meant: {' or '.join(meant)}." if meant else f"Known here: {', '.join(known)}."


def names_at(form: Schema | fields.Field[Any], steps: Sequence[str]) -> set[str]:
    """Return the names of the members that may stand at this place of a document; none where it holds no object."""
    if isinstance(form, Schema):
        known = {field.data_key or name: field for name, field in form.fields.items()}
        if not steps:
            return set(known)
        return names_at(known[steps[0]], steps[1:]) if steps[0] in known else set()
    if isinstance(form, fields.Nested):
        return names_at(form.schema, steps)
    if isinstance(form, fields.List):
        return names_at(form.inner, steps[1:])
    if isinstance(form, Either):
        return set().union(*(names_at(each, steps) for each in form.alternatives))
    return set()
