"""Objects by their hash."""

from __future__ import annotations

from counterpane.api import examples
from counterpane.api.operations import Answer, Call, operation


@operation(
    "GET",
    "/v1/objects/sha256/<sha256>",
    tag="objects",
    answer={"type": "object"},
    role="reader",
    tagged=True,
    caching="max-age=31536000, immutable",
    examples=examples.OBJECT,
)
def get_object(call: Call) -> Answer:
    """Get the content of a revision as canonical JSON (RFC 8785), whose SHA-256 is its name.

    A number that is not whole is the text "a/b" in lowest terms, since canonical JSON would round it.
    """
    sha256 = call.path["sha256"]
    return Answer(
        call.services.store.object(sha256),
        sha256=sha256,
    )
