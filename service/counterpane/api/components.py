"""Components over HTTP."""

from __future__ import annotations

from counterpane.api import examples, kept
from counterpane.api.operations import Answer, Call, operation
from counterpane.api.sending import as_json
from counterpane.library import alike, components
from counterpane_schema.component import (
    CompanionPage,
    CompanionQuery,
    ComponentAnswer,
    ComponentContent,
    ComponentInWords,
    ComponentPage,
    ComponentQuery,
)
from counterpane_schema.revision import RevisionList
from counterpane_schema.texture import AlikeList, AlikeQuery

PATH = "/v1/components"
ONE = f"{PATH}/<slug>"
TAG = "components"


def _current(call: Call) -> str:
    return components.get(call.services, call.path["slug"]).sha256


@operation("GET", PATH, tag=TAG, answer=ComponentPage, query=ComponentQuery, role="reader", examples=examples.LISTED)
def list_components(call: Call) -> Answer:
    """List components.

    With `admits`, those that admit the count, by modulus and least count: a fixed count admits only itself, cast-ons
    and bind-offs admit any count they can hold, and a part with parameters admits what some allowed value gives.
    """
    return kept.listed(call, "component", PATH)


@operation(
    "POST",
    PATH,
    tag=TAG,
    answer=ComponentAnswer,
    status=201,
    body=ComponentContent,
    or_body=ComponentInWords,
    role="contributor",
    tagged=True,
    problems=("taken", "cannot-be-kept", "does-not-prove", "incomplete"),
    examples=examples.COMPONENT_ADDED,
)
def add_component(call: Call) -> Answer:
    """Add a component.

    Its rows are read, its multiple derived, and its worked examples compared with both; what does not prove is refused
    with findings. Members that the library tells (`derived`, `etag` and the like) are left aside.

    A `text` in place of versions is rows as they are printed, with their stated multiple where there is one: all that
    follows from them is filled in, what does not is asked for in `errors`, and nothing is made up.
    """
    return kept.added(components.take(call.services, call.body, call.by), PATH)


@operation("GET", ONE, tag=TAG, answer=ComponentAnswer, role="reader", tagged=True, examples=examples.COMPONENT)
def get_component(call: Call) -> Answer:
    """Get the latest revision of a component, with what is derived from its rows."""
    return kept.shown(components.get(call.services, call.path["slug"]))


@operation(
    "PUT",
    ONE,
    tag=TAG,
    answer=ComponentAnswer,
    body=ComponentContent,
    role="contributor",
    tagged=True,
    current=_current,
    problems=("cannot-be-kept", "does-not-prove"),
    examples=examples.COMPONENT_REVISED,
)
def revise_component(call: Call) -> Answer:
    """Make the next revision of a component.

    The header If-Match names the revision that is changed. The same content again changes nothing.
    """
    return kept.shown(components.revise(call.services, call.path["slug"], call.body, call.expected, call.by))


@operation("GET", f"{ONE}/revisions", tag=TAG, answer=RevisionList, role="reader", examples=examples.COMPONENT)
def list_component_revisions(call: Call) -> Answer:
    """List all revisions of a component, oldest first."""
    return kept.history(components.history(call.services, call.path["slug"]), f"{PATH}/{call.path['slug']}")


@operation(
    "GET",
    f"{ONE}/revisions/<sha256>",
    tag=TAG,
    answer=ComponentAnswer,
    role="reader",
    tagged=True,
    examples=examples.COMPONENT_REVISION,
)
def get_component_revision(call: Call) -> Answer:
    """Get one revision of a component by its hash."""
    return kept.shown(components.revision(call.services, call.path["slug"], call.path["sha256"]))


@operation(
    "GET",
    f"{ONE}/companions",
    tag=TAG,
    answer=CompanionPage,
    query=CompanionQuery,
    role="reader",
    problems=("does-not-prove",),
    examples=examples.COMPANIONS,
)
def list_companions(call: Call) -> Answer:
    """List which components fit this one at a count.

    Ends, bands, cast-ons and bind-offs share the count; side borders and selvedges stand beside it and add their own
    stitches, once each side. Each companion says where it fits and how many stitches are then cast on.
    """
    return kept.companions(call, f"{PATH}/{call.path['slug']}/companions")


@operation(
    "GET",
    f"{ONE}/alike",
    tag=TAG,
    answer=AlikeList,
    query=AlikeQuery,
    role="reader",
    examples=examples.ALIKE,
)
def list_alike(call: Call) -> Answer:
    """List the components whose texture is like that of this one.

    Two textures are laid over each other at every shift, as they are, turned over, turned about and mirrored; the best
    counts. The stitches as the eye sees them are compared: knit, purl, open, slipped or crossed. Those of which
    `percent` agree are listed, the likest first, from 90 if nothing is asked for (house figure).
    """
    return as_json(alike.alike(call.services, call.path["slug"], **call.query))
