"""The matrix over HTTP."""

from __future__ import annotations

from counterpane.api import examples
from counterpane.api.operations import JSON, Answer, Call, operation
from counterpane.api.sending import as_json
from counterpane.library.parts import matrix
from counterpane.library.parts.matrix_picture import as_svg
from counterpane.library.parts.matrix_text import as_text
from counterpane_schema.matrix import MatrixAnswer, MatrixQuery

PATH = "/v1/matrix"
TEXT, SVG = "text/plain", "image/svg+xml"


@operation(
    "GET",
    PATH,
    tag="components",
    answer=MatrixAnswer,
    media=(JSON, TEXT, SVG),
    query=MatrixQuery,
    role="reader",
    problems=("not-found", "does-not-prove"),
    examples=examples.MATRIX,
)
def get_matrix(call: Call) -> Answer:
    """Hold every body against every border, edge, cast-on and bind-off.

    Each cell says whether the counts of the two meet, at a `count` of the body or at all it takes, with the reason, the
    correction that makes them meet, and what else is to be said of the two under the slug of its rule. A border stands
    in two columns, at the ends and at the sides. The form is that of the header Accept: JSON, plain text or a picture.
    """
    found = matrix.matrix(call.services, **call.query)
    if call.media == SVG:
        return Answer(as_svg(found).encode(), media=SVG)
    return Answer(as_text(found).encode(), media=f"{TEXT}; charset=utf-8") if call.media == TEXT else as_json(found)
