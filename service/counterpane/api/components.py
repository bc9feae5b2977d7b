"""Components over HTTP."""

from __future__ import annotations

from counterpane.api import examples, kept
from counterpane.api.keeping import Noun, Said, Shapes, Shown
from counterpane.api.operations import Answer, Call, operation
from counterpane.api.sending import as_json
from counterpane.library.parts import alike, components
from counterpane_schema.component import (
    CompanionPage,
    CompanionQuery,
    ComponentAnswer,
    ComponentContent,
    ComponentInWords,
    ComponentPage,
)
from counterpane_schema.search import ComponentQuery
from counterpane_schema.texture import AlikeList, AlikeQuery

COMPONENTS = Noun(
    components.COMPONENTS,
    Shapes(ComponentContent, ComponentPage, ComponentAnswer, ComponentQuery, ComponentInWords),
    Shown(
        listed=examples.LISTED,
        added=examples.COMPONENT_ADDED,
        one=examples.COMPONENT,
        revised=examples.COMPONENT_REVISED,
        revision=examples.COMPONENT_REVISION,
    ),
    Said(
        listed="With `admits`, those that admit the count, by multiple and smallest count: a fixed count admits only "
        "itself, cast-ons and bind-offs admit any count they can hold, and a part with parameters admits what some "
        "allowed value gives. With `width_cm` and `gauge`, those that admit a count of that width. Counts asked for in "
        "several ways are one count. What is not known of a component answers no question: likely to lie flat is what "
        "the house model says, and facets count what it cannot judge as not known. With words, those in names come "
        "first, each sort by age; with `like`, the likest first. `facets=yes` counts all that the list holds.",
        added="Its rows are read, its multiple derived, and its worked examples compared with both; what does not "
        "prove is refused with findings. Members that the library tells (`derived`, `etag` and the like) are left "
        "aside. A `text` in place of versions is rows as they are printed, with their stated multiple where there is "
        "one: all that follows from them is filled in, what does not is asked for in `errors`, and nothing is made up.",
        got=", with what is derived from its rows",
    ),
    refused=("cannot-be-kept", "does-not-prove"),
    adding=("incomplete",),
    listing=("not-found", "not-usable", "withdrawn"),
    read=components.content_sent,
)
ONE = f"{COMPONENTS.path}/<slug>"


@operation(
    "GET",
    f"{ONE}/companions",
    tag=COMPONENTS.tag,
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
    return kept.companions(call, f"{COMPONENTS.path}/{call.path['slug']}/companions")


@operation(
    "GET",
    f"{ONE}/alike",
    tag=COMPONENTS.tag,
    answer=AlikeList,
    query=AlikeQuery,
    role="reader",
    examples=examples.ALIKE,
)
def list_alike(call: Call) -> Answer:
    """List the components whose texture is like that of this one.

    Two textures are laid over each other at every shift, as they are, turned over, turned about and mirrored; the best
    counts. The stitches as the eye sees them are compared: knit, purl, open, slipped or crossed. Those of which
    `percent` agree are listed, the likest first. If nothing is asked for, 90 of a hundred agree, and all of a repeat
    of less than 36 stitches, of which fewer may agree by chance (house figures).
    """
    return as_json(alike.alike(call.services, call.path["slug"], **call.query))
