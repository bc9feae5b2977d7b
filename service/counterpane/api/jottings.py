"""Test knits, answers to knitters and finished pieces over HTTP, each noted of a recipe."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass
from typing import Any

from marshmallow import Schema

from counterpane.api import jotting_examples as examples
from counterpane.api import kept
from counterpane.api.operations import Answer, Call, Example, Method, Operation, operation
from counterpane.api.paging import page, read_query, write_cursor
from counterpane.api.sending import as_json
from counterpane.library.keeping.objects import json_bytes
from counterpane.library.knitting import knitted, noting
from counterpane.library.knitting.jottings import Sort
from counterpane.library.knitting.shown import shown
from counterpane_schema.jotting import (
    CONTENTS,
    JottingAnswer,
    JottingPage,
    JottingQuery,
    KnittedAnswer,
    PieceAnswer,
    RowNotesAnswer,
    TakenBackAnswer,
    TakingBack,
    TestKnitAnswer,
)

RECIPE = "/v1/recipes/<slug>"
TAG = "jottings"
WHO = "Who wrote it down may change it and take it back, and so may a reviewer."
NOTHING_OF_A_CHILD = (
    "Nothing of a child is kept: there is no member for it, one that is not known is refused, and the free texts are "
    "for the piece alone. A record of a piece is copied from hand to hand; what is not in it cannot be lost."
)


@dataclass(frozen=True, slots=True)
class Kind:
    """One sort of jotting over HTTP: its answer, its examples, and what is said of it."""

    sort: Sort
    name: str
    called: str
    answer: type[Schema]
    said: str
    example: dict[str, Any]
    first: str

    @property
    def path(self) -> str:
        """Where all of it stands."""
        return f"{RECIPE}/{noting.PATHS[self.sort]}"

    @property
    def _place(self) -> dict[str, str]:
        return {"slug": examples.SLUG, "number": self.first}

    def operations(self) -> tuple[Operation, ...]:
        """Return its operations in the order in which the page shows them."""
        return self._list(), self._add(), self._get(), self._change(), self._take_back()

    def _operation(self, method: Method, end: str, view: Callable[[Call], Answer], **more: Any) -> Operation:
        usual = {"tag": TAG, "description": "", "answer": self.answer, "examples": (Example(self._place),)}
        return Operation(method=method, path=f"{self.path}{end}", view=view, **{**usual, **more})

    def _list(self) -> Operation:
        return self._operation(
            "GET",
            "",
            self._listed,
            name=f"list_{self.name}s",
            summary=f"List the {self.called}s of a recipe, the first one first.",
            answer=JottingPage,
            query=JottingQuery,
            role="reader",
            examples=examples.LISTED,
        )

    def _listed(self, call: Call) -> Answer:
        filters, after, limit = read_query(call.services, call.query)
        which = noting.Which(self.sort, call.path["slug"])
        noting.require_recipe(call.services, which.recipe)
        items, last = noting.page(call.services, which, int(after[0]) if after else 0, limit)
        cursor = write_cursor(call.services, filters | {"limit": limit}, (last,)) if last is not None else None
        return page(self.path.replace("<slug>", which.recipe), [json_bytes(each) for each in items], cursor)

    def _add(self) -> Operation:
        return self._operation(
            "POST",
            "",
            self._added,
            name=f"add_{self.name}",
            summary=f"Note a {self.called} of a recipe.",
            description=self.said,
            status=201,
            body=CONTENTS[self.sort],
            role="contributor",
            once=True,
            tagged=True,
            problems=("not-usable", "cannot-be-planned"),
            examples=(Example({"slug": examples.SLUG}, body=self.example),),
        )

    def _added(self, call: Call) -> Answer:
        which = noting.Which(self.sort, call.path["slug"])
        told, before = noting.add_once(call.services, which, call.body, call.by, call.once)
        headers = (("Location", told["href"]), *kept.again(before))
        return Answer(json_bytes(told), 201, sha256=told["sha256"], headers=headers)

    def _get(self) -> Operation:
        return self._operation(
            "GET",
            "/<number>",
            self._got,
            name=f"get_{self.name}",
            summary=f"Get a {self.called} with what follows from it.",
            description=self.said,
            role="reader",
        )

    def _got(self, call: Call) -> Answer:
        return as_json(shown(call.services, self._which(call)))

    def _change(self) -> Operation:
        return self._operation(
            "PUT",
            "/<number>",
            self._changed,
            name=f"change_{self.name}",
            summary=f"Say something else in a {self.called}.",
            description=f"The header If-Match names the state that is changed, its `etag`. {WHO}",
            body=CONTENTS[self.sort],
            role="contributor",
            current=lambda call: noting.theirs(call.services, self._which(call), call.writer).sha256,
            tagged=True,
            problems=("not-theirs", "not-usable", "cannot-be-planned"),
            examples=(Example(self._place, body=self.example),),
        )

    def _changed(self, call: Call) -> Answer:
        told = noting.change(call.services, self._which(call), call.body, call.expected, call.writer)
        return Answer(json_bytes(told), sha256=told["sha256"])

    def _take_back(self) -> Operation:
        return self._operation(
            "POST",
            "/<number>/taking-back",
            self._taken_back,
            name=f"take_back_{self.name}",
            summary=f"Take a {self.called} back for a reason.",
            description=f"What it said is kept no longer; its address answers 410 with the reason. {WHO}",
            answer=TakenBackAnswer,
            body=TakingBack,
            role="contributor",
            once=True,
            problems=("not-theirs", "not-usable", "stale"),
            examples=(Example(self._place, body=examples.TAKEN_BACK),),
        )

    def _taken_back(self, call: Call) -> Answer:
        which, say = self._which(call), call.body["say"]
        told, before = noting.take_back_once(call.services, which, say, call.writer, call.once)
        return Answer(json_bytes(told), headers=kept.again(before))

    def _which(self, call: Call) -> noting.Which:
        listed = self.path.replace("<slug>", call.path["slug"])
        number = call.number(f"a {self.called}", f"GET {listed} lists them.")
        return noting.Which(self.sort, call.path["slug"], number)


TEST_KNITS = Kind(
    "test-knit",
    "test_knit",
    "test knit",
    TestKnitAnswer,
    "It is of the latest revision of the recipe, of one that is named, or of an edition and one of its sizes. When it "
    "is read its gauge, size, grams and hours stand beside what the plan predicted, with the difference.",
    examples.TEST_KNIT,
    "1",
)
ANSWERS = Kind(
    "answer",
    "answer",
    "given answer",
    JottingAnswer,
    "It belongs to a row. Where it says that the pattern was wrong, it may name the edition whose erratum puts it "
    "right; until one does, it stands among the corrections of each edition of that recipe.",
    examples.ANSWER,
    "2",
)
PIECES = Kind(
    "piece",
    "piece",
    "finished piece",
    PieceAnswer,
    f"{NOTHING_OF_A_CHILD} When it is read, what was measured stands beside what safety asked of its plan: an estimate "
    "does not count, what is not assessed is no pass, and local rules come first.",
    examples.PIECE,
    "3",
)


@operation("GET", f"{RECIPE}/knitted", tag=TAG, answer=KnittedAnswer, role="reader", examples=examples.LISTED)
def get_knitted(call: Call) -> Answer:
    """Get all test knits of a recipe against their plans, and what yarn and pace come to by them.

    The loop length is all their yarn over all their loops, and the pace all their stitches over their minutes; each
    says on how many knits it rests and what that is worth.
    """
    return as_json(knitted.knitted(call.services, call.path["slug"]))


@operation("GET", f"{RECIPE}/rows", tag=TAG, answer=RowNotesAnswer, role="reader", examples=examples.LISTED)
def list_row_notes(call: Call) -> Answer:
    """List the rows of a recipe about which something was asked or answered.

    A row that two knitters or more ask about is flagged.
    """
    return as_json(knitted.by_row(call.services, call.path["slug"]))
