"""What is noted of a recipe by those who knit from it: test knits, answers to knitters, and finished pieces.

No form here has a member for a child: no name, no day of birth, no weight, no address. A record of a piece goes from
hand to hand and is copied, and what is not in it cannot be lost; a member that is not known is refused. The free texts
are for the piece alone.
"""

from __future__ import annotations

from collections.abc import Mapping

from marshmallow import fields, validate

from counterpane_schema.choices import JOTTINGS
from counterpane_schema.fields import Day, Number, Sha256, Slug, Text, Told, Whole, Word, YesNo
from counterpane_schema.forms import Closed, Open
from counterpane_schema.kept import KeptContent
from counterpane_schema.standing import SENTENCE, PersonAnswer

MOST_QUERIES = 100
MOST_OPENINGS = 100
MOST_EDITION = 10**9 - 1
MOST_ROW = 100_000
LARGEST = 1_000_000
"""House: the largest figure of a piece."""


class JottingContent(KeptContent):
    """What every jotting says: which revision of the recipe it is about, and whose it is."""

    number = Told()
    sort = Told()
    recipe = Told()
    at = Told()
    by = Told()
    whose_key = Told()
    href = Told()
    about = Told()
    measured = Told()
    safety = Told()
    not_compared = Told()
    compared = Told()
    washing = Told()
    for_a_plan = Told()

    revision = Sha256(metadata={"description": "The revision of the recipe; that of the edition, or the latest."})
    edition = Whole(
        least=1, most=MOST_EDITION, allow_none=True, metadata={"description": "The edition that was knitted from."}
    )
    size = Text(
        most=30, allow_none=True, metadata={"description": "The size by its name, where the edition has several."}
    )
    whose = Text(
        most=200,
        allow_none=True,
        metadata={"description": "Who knitted, answered or made it; a pseudonym will do. Whoever sends it if unsaid."},
    )


class KnitMeasures(Closed):
    """The gauge and the size of a piece as they were taken, each only where it was."""

    stitches = Number(above=True, most=LARGEST, metadata={"description": "Stitches of the body over the window."})
    rows = Number(above=True, most=LARGEST, metadata={"description": "Rows of the body over the window."})
    over_cm = Number(above=True, most=LARGEST, metadata={"description": "The window in centimetres; 10 if unsaid."})
    width_cm = Number(above=True, most=LARGEST)
    length_cm = Number(above=True, most=LARGEST)


class RowQuery(Closed):
    """A question about a row."""

    section = Text(most=200, metadata={"description": "The part by its name; without it the row is of the blanket."})
    row = Whole(required=True, least=1, most=MOST_ROW, metadata={"description": "The row, counted from 1."})
    question = Text(
        required=True, lines=True, most=SENTENCE, metadata={"description": "What was not clear, or came out wrong."}
    )


class TestKnitContent(JottingContent):
    """A test knit: what was knitted with, what came of it, and which rows were asked about."""

    on = Day()
    yarn = Text(most=200, allow_none=True, metadata={"description": "The yarn; that of the recipe if not given."})
    metres_per_100g = Number(above=True, most=LARGEST, metadata={"description": "Metres to 100 g, as the band says."})
    needle_mm = Number(above=True, most=50, metadata={"description": "The needle, in millimetres."})
    unwashed = fields.Nested(KnitMeasures, metadata={"description": "As it came off the needles."})
    washed = fields.Nested(KnitMeasures, metadata={"description": "After its wash, dry."})
    grams = Number(above=True, most=LARGEST, metadata={"description": "What the whole piece weighs, dry."})
    metres = Number(above=True, most=LARGEST, metadata={"description": "Metres of yarn it took, where that is known."})
    hours = Number(above=True, most=LARGEST, metadata={"description": "Hours that the knitting took."})
    queries = fields.List(
        fields.Nested(RowQuery),
        validate=validate.Length(0, MOST_QUERIES),
        metadata={"description": "Rows that were asked about, with a question each."},
    )


class AnswerContent(JottingContent):
    """An answer that was given to a knitter about a row."""

    section = Text(most=200, metadata={"description": "The part by its name; without it the row is of the blanket."})
    row = Whole(required=True, least=1, most=MOST_ROW, metadata={"description": "The row, counted from 1."})
    question = Text(required=True, lines=True, most=SENTENCE, metadata={"description": "What was asked."})
    answer = Text(required=True, lines=True, most=SENTENCE, metadata={"description": "What was answered."})
    wrong = YesNo(metadata={"description": "Whether the answer says that the pattern was wrong; no if not given."})
    erratum = Whole(
        least=1,
        most=MOST_EDITION,
        allow_none=True,
        metadata={"description": "The edition whose erratum puts it right, where there is one."},
    )


class PieceOpening(Closed):
    """An opening of the piece and how its size was found; only a rod tells."""

    mm = Number(required=True, most=LARGEST, metadata={"description": "The largest rod that enters, or the estimate."})
    found_by = Word(
        "rod", "estimate", required=True, metadata={"description": "A smooth rod without force, or an estimate."}
    )
    where = Text(most=200, metadata={"description": "Where in the piece it is."})


class PieceContent(JottingContent):
    """The record of a finished piece: plan, yarn, labels and what was measured of it; nothing of a child."""

    on = Day(required=True)
    yarn = Text(most=200, allow_none=True, metadata={"description": "The yarn it is of."})
    dye_lot = Text(most=200, metadata={"description": "The dye lot on the bands."})
    labels = fields.List(
        Text(most=200), validate=validate.Length(0, 20), metadata={"description": "What stands on its labels."}
    )
    care = Text(most=2_000, lines=True, metadata={"description": "How it is to be washed and dried."})
    washed = YesNo(metadata={"description": "Whether it was washed and dry when it was measured; no if not given."})
    weighed_g = Number(above=True, most=LARGEST, metadata={"description": "What it weighs in grams."})
    width_cm = Number(above=True, most=LARGEST)
    length_cm = Number(above=True, most=LARGEST)
    openings = fields.List(
        fields.Nested(PieceOpening),
        validate=validate.Length(0, MOST_OPENINGS),
        metadata={"description": "Openings that were looked at; the largest counts."},
    )


CONTENTS: Mapping[str, type[JottingContent]] = {
    "test-knit": TestKnitContent,
    "answer": AnswerContent,
    "piece": PieceContent,
}
"""What each sort of jotting says."""


class TakingBack(Closed):
    """Why a jotting is taken back."""

    say = Text(
        required=True, lines=True, most=SENTENCE, metadata={"description": "The reason in a sentence for people."}
    )


class JottingQuery(Closed):
    """How many to list, and from where."""

    limit = Whole(least=1, most=200, metadata={"description": "How many items a page holds; 50 if not given."})
    cursor = Text(
        least=0, most=2_000, metadata={"description": "Where the page begins, from `next` of the page before."}
    )


class JottingAnswer(Open):
    """A jotting as it is kept, with what it says; `whose` is null where the name was erased."""

    number = Whole(required=True, least=1)
    sort = Word(*JOTTINGS, required=True)
    recipe = Slug(required=True)
    revision = Sha256(required=True)
    edition = Whole(allow_none=True, least=1)
    size = Text(allow_none=True)
    whose = Text(required=True, allow_none=True)
    whose_key = Text(required=True)
    by = fields.Nested(PersonAnswer, required=True)
    at = Text(required=True)
    changed = Text(required=True)
    sha256 = Sha256(required=True)
    etag = Text(required=True)
    href = Text(required=True)


class ComparedFigure(Open):
    """A figure as the plan predicted it and as it came out; the difference is from the likely value."""

    figure = Text(required=True)
    predicted = Number(required=True, allow_none=True)
    low = Number(required=True, allow_none=True)
    high = Number(required=True, allow_none=True)
    actual = Number(required=True)
    difference = Number(required=True, allow_none=True, least=-LARGEST)
    percent = Number(required=True, allow_none=True, least=-LARGEST)
    within = YesNo(required=True, allow_none=True)


class TestKnitAnswer(JottingAnswer):
    """A test knit against what its plan predicted.

    `not_compared` says why, where nothing can be compared; `for_a_plan` is what a later plan request in the same yarn
    and by the same hands may take from it.
    """

    compared = fields.List(fields.Nested(ComparedFigure))
    washing = fields.List(fields.Dict())
    for_a_plan = fields.Dict(allow_none=True)
    not_compared = Text(allow_none=True, lines=True, most=10_000)


class PieceAnswer(JottingAnswer):
    """A piece beside what safety asked; what is not assessed is no pass."""

    about = Text()
    measured = fields.List(fields.Dict())
    safety = fields.Dict(allow_none=True)
    not_compared = Text(allow_none=True, lines=True, most=10_000)


class TakenBackAnswer(Open):
    """A jotting that was taken back: what it said is kept no longer."""

    number = Whole(required=True, least=1)
    sort = Word(*JOTTINGS, required=True)
    recipe = Slug(required=True)
    taken_back = Text(required=True, lines=True)
    changed = Text(required=True)


class JottingPage(Open):
    """A page of jottings by number."""

    items = fields.List(fields.Nested(JottingAnswer), required=True)
    next = Text(required=True, allow_none=True)


class RefitAnswer(Open):
    """A figure worked out of all knits together, with the least and the greatest that one of them gives."""

    value = Number(required=True)
    least = Number(required=True)
    most = Number(required=True)
    apart_percent = Number(required=True)
    knits = Whole(required=True, least=1)
    worth = Text(required=True)


class KnittedAnswer(Open):
    """All test knits of a recipe against their plans, and what yarn and pace come to by them.

    `left_out` says which knit a refit does not rest on, and why; `whole` is false where there are more than are read.
    """

    recipe = Slug(required=True)
    knits = Whole(required=True, least=0)
    whole = YesNo(required=True)
    items = fields.List(fields.Dict(), required=True)
    loop_mm = fields.Nested(RefitAnswer, required=True, allow_none=True)
    stitches_a_minute = fields.Nested(RefitAnswer, required=True, allow_none=True)
    left_out = fields.List(fields.Dict(), required=True)


class RowNotes(Open):
    """What was asked and answered of one row; it is flagged where two knitters or more ask about it."""

    revision = Sha256(required=True)
    section = Text(required=True)
    row = Whole(required=True, least=1)
    knitters = Whole(required=True, least=0)
    flagged = YesNo(required=True)
    wrong = YesNo(required=True)
    questions = fields.List(fields.Dict(), required=True)
    answers = fields.List(fields.Dict(), required=True)


class RowNotesAnswer(Open):
    """The rows of a recipe about which something was asked or answered."""

    recipe = Slug(required=True)
    whole = YesNo(required=True)
    items = fields.List(fields.Nested(RowNotes), required=True)
