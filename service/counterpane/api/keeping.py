"""The operations of a kept noun: list, add, get, revise, its revisions, all or one of them, and where they stand.

A noun says what goes over the wire, what may be refused, and what of it is not said of every noun.
"""

from __future__ import annotations

from collections.abc import Callable, Mapping
from dataclasses import dataclass
from typing import Any

from marshmallow import Schema

from counterpane.api import kept
from counterpane.api.exports import SUFFIXES, export_operations, exported
from counterpane.api.operations import JSON, Answer, Call, Example, Method, Operation
from counterpane.api.sending import as_json
from counterpane.library.keeping.keeping import Keeping
from counterpane.library.keeping.objects import json_bytes
from counterpane.library.review import standing
from counterpane.library.services import Services
from counterpane_schema.kept import KeptQuery
from counterpane_schema.revision import RevisionList
from counterpane_schema.standing import MoveContent, StandingAnswer

Examples = tuple[Example, ...]
REVISED = (
    "The header If-Match names the revision that is changed. The same content again changes nothing. With "
    "If-None-Match: * in its place the first revision is made, under the slug of the address, and 412 says that there "
    "is one already."
)

MOVED = (
    "What the revision says never changes, nor its hash. The reason is a code of GET /v1/reasons with a sentence for "
    "people; a deprecation names the replacement, a quarantine its last day and who looks after it. A withdrawn one is "
    "in no list, and its address and hash answer 410 with the reason."
)
ACCEPTED = {"to": "accepted", "because": "sound", "say": "Worked twice, over 24 and 36 stitches."}


@dataclass(frozen=True, slots=True)
class Shapes:
    """What goes over the wire; `or_content` is another form in which a noun may be sent."""

    content: type[Schema]
    page: type[Schema]
    answer: type[Schema]
    query: type[Schema] = KeptQuery
    or_content: type[Schema] | None = None


@dataclass(frozen=True, slots=True)
class Shown:
    """Requests that work, for each operation; that which gets one serves for its revisions too."""

    listed: Examples
    added: Examples
    one: Examples
    revised: Examples
    revision: Examples


@dataclass(frozen=True, slots=True)
class Said:
    """What is said of a noun alone: of its list, of adding it, and after the summary of getting it."""

    listed: str = ""
    added: str = ""
    got: str = ""


@dataclass(frozen=True, slots=True)
class Noun:
    """A kept noun over HTTP; its shelf names it.

    `read` makes the content of what is sent, `refused` are the problems of a content that does not hold, `adding`
    those of adding alone, beside a slug that is taken, and `listing` those of the filters of its list.
    """

    keeping: Keeping
    shapes: Shapes
    shown: Shown
    said: Said
    refused: tuple[str, ...]
    adding: tuple[str, ...] = ()
    listing: tuple[str, ...] = ()
    read: Callable[[Services, Mapping[str, Any]], Mapping[str, Any]] = lambda _, sent: sent

    @property
    def name(self) -> str:
        """What it is called."""
        return self.keeping.shelf

    @property
    def tag(self) -> str:
        """What several of it are called."""
        return f"{self.name}s"

    @property
    def path(self) -> str:
        """Where all of it stands."""
        return f"/v1/{self.tag}"

    def operations(self) -> tuple[Operation, ...]:
        """Return its operations in the order in which the page shows them."""
        chain = (self._list_revisions(), self._get_revision(), self._get_standing(), self._move())
        exports = export_operations(self.keeping.shelf, self.shapes.query, self.shown.listed, self.listing)
        return (self._list(), *exports, self._add(), self._get(), self._revise(), *chain)

    def _operation(self, method: Method, end: str, view: Callable[[Call], Answer], **more: Any) -> Operation:
        about = {"tag": self.tag, "description": "", "answer": self.shapes.answer}
        return Operation(method=method, path=f"{self.path}{end}", view=view, **{**about, **more})

    def _list(self) -> Operation:
        return self._operation(
            "GET",
            "",
            self._listed,
            name=f"list_{self.tag}",
            summary=f"List {self.tag}.",
            answer=self.shapes.page,
            description=self.said.listed,
            media=(JSON, *SUFFIXES),
            query=self.shapes.query,
            role="reader",
            counts=True,
            problems=self.listing,
            examples=self.shown.listed,
        )

    def _listed(self, call: Call) -> Answer:
        if call.media in SUFFIXES:
            return exported(call, self.keeping.shelf, call.media)
        return kept.listed(call, self.keeping.shelf, self.path)

    def _add(self) -> Operation:
        return self._operation(
            "POST",
            "",
            self._added,
            name=f"add_{self.name}",
            summary=f"Add a {self.name}.",
            description=self.said.added,
            status=201,
            body=self.shapes.content,
            or_body=self.shapes.or_content,
            role="contributor",
            tagged=True,
            once=True,
            problems=("taken", *self.refused, *self.adding),
            examples=self.shown.added,
        )

    def _added(self, call: Call) -> Answer:
        content = self.read(call.services, call.body)
        return kept.added(*self.keeping.add_once(call.services, content, call.by, call.once), self.path)

    def _get(self) -> Operation:
        return self._operation(
            "GET",
            "/<slug>",
            lambda call: kept.shown(self.keeping.get(call.services, call.path["slug"])),
            name=f"get_{self.name}",
            summary=f"Get the latest revision of a {self.name}{self.said.got}.",
            role="reader",
            tagged=True,
            examples=self.shown.one,
        )

    def _revise(self) -> Operation:
        return self._operation(
            "PUT",
            "/<slug>",
            self._revised,
            name=f"revise_{self.name}",
            summary=f"Make the next revision of a {self.name}.",
            description=REVISED,
            body=self.shapes.content,
            role="contributor",
            tagged=True,
            creates=True,
            current=self._current,
            problems=("not-theirs", *self.refused),
            examples=self.shown.revised,
        )

    def _revised(self, call: Call) -> Answer:
        slug = call.path["slug"]
        if call.makes:
            return kept.added(self.keeping.create(call.services, slug, call.body, call.by), False, self.path)
        return kept.shown(self.keeping.revise(call.services, slug, call.body, call.expected, call.by))

    def _current(self, call: Call) -> str:
        """Return the hash of what a change would change; raise NotTheirs for who may not change it."""
        latest = self.keeping.latest(call.services, call.path["slug"])
        if call.holder:
            standing.require_owner(call.services, self.keeping.shelf, latest.slug, call.holder)
        return latest.sha256

    def _list_revisions(self) -> Operation:
        return self._operation(
            "GET",
            "/<slug>/revisions",
            lambda call: kept.history(
                self.keeping.history(call.services, call.path["slug"]), f"{self.path}/{call.path['slug']}"
            ),
            name=f"list_{self.name}_revisions",
            summary=f"List all revisions of a {self.name}, oldest first.",
            answer=RevisionList,
            role="reader",
            examples=self.shown.one,
        )

    def _get_revision(self) -> Operation:
        return self._operation(
            "GET",
            "/<slug>/revisions/<sha256>",
            lambda call: kept.shown(self.keeping.revision(call.services, call.path["slug"], call.path["sha256"])),
            name=f"get_{self.name}_revision",
            summary=f"Get one revision of a {self.name} by its hash.",
            role="reader",
            tagged=True,
            examples=self.shown.revision,
        )

    def _get_standing(self) -> Operation:
        return self._operation(
            "GET",
            "/<slug>/standing",
            lambda call: as_json(standing.told(call.services, self.keeping.shelf, call.path["slug"])),
            name=f"get_{self.name}_standing",
            summary=f"Tell where each revision of a {self.name} stands, and by which moves it came there.",
            description="It is told of what was withdrawn too.",
            answer=StandingAnswer,
            role="reader",
            examples=self.shown.one,
        )

    def _move(self) -> Operation:
        return self._operation(
            "POST",
            "/<slug>/standing",
            self._moved,
            name=f"move_{self.name}",
            summary=f"Move a revision of a {self.name} to another state.",
            description=MOVED,
            body=MoveContent,
            answer=StandingAnswer,
            role="contributor",
            once=True,
            problems=("moved", "not-theirs", "not-usable", "withdrawn"),
            examples=tuple(Example(each.path, body=ACCEPTED) for each in self.shown.revised),
        )

    def _moved(self, call: Call) -> Answer:
        about = self.keeping.shelf, call.path["slug"]
        told, before = standing.move_once(call.services, *about, call.body, call.writer, once=call.once)
        return Answer(json_bytes(told), headers=kept.again(before))
