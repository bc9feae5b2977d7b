"""Components: adding, revising and finding them. Whatever is kept has been proved first."""

from __future__ import annotations

from collections.abc import Mapping
from functools import lru_cache
from typing import Any

import orjson

from counterpane.craft.component import Component, Problem, component_of, content_of, derive, prove
from counterpane.craft.findings import Finding
from counterpane.library.errors import Incomplete, NotFound, Refused
from counterpane.library.keeping.keeping import UNEXPLAINED, Keeping
from counterpane.library.keeping.objects import canonical, digest, json_bytes
from counterpane.library.parts.adopting import adopt
from counterpane.library.parts.retelling import retold
from counterpane.library.parts.stricter_notes import micrometres, noted
from counterpane.library.parts.telling import classes_of, counts_json, derived_json
from counterpane.library.parts.textures import keys_of, same_texture
from counterpane.library.parts.traits import traits_of
from counterpane.library.ports import Entry, Shelf
from counterpane.library.services import Services

SHELF: Shelf = "component"
KEPT_READY = 1024
"""Components that stand ready without being read again; they are looked up by their bytes, which never change."""


def content_sent(services: Services, sent: Mapping[str, Any]) -> Mapping[str, Any]:
    """Return a component that is sent as its fields, or as a `text` with what people say of it.

    Raise Incomplete where something of a text must still be said, and Refused for one that does not hold.
    """
    if "text" not in sent:
        return sent
    adoption = adopt(sent["text"], sent, services.vocabulary)
    if adoption.questions:
        raise Incomplete([(each.pointer, each.text) for each in adoption.questions], adoption.derived)
    return adoption.content


def find(services: Services, slug: str, sha256: str | None = None) -> Component:
    """Return the component of this slug, at its latest revision or at that of a hash; raise NotFound."""
    found = sha256 or latest(services, slug).sha256
    component = _ready(services.store.object(found))
    if component.slug != slug:
        raise NotFound(f"The component {slug!r} has no revision {found}.")
    return component


@lru_cache(KEPT_READY)
def _ready(content: bytes) -> Component:
    return component_of(orjson.loads(content))


def entry_of(services: Services, content: Mapping[str, Any], by: str, status: str) -> Entry:
    """Prove a component and return it as the store keeps it; raise Refused and Unkeepable."""
    component = component_of(content)
    problems = prove(component, services.vocabulary)
    if problems:
        raise Refused(f"{component.slug!r} does not prove.", tuple(_finding(each) for each in problems))
    whole = content_of(component)
    data = canonical(whole)
    sha256, at = digest(data), services.now()
    keys = keys_of(component, services.vocabulary)
    told = {
        "derived": derived_json(component, services.vocabulary),
        "same_texture": same_texture(services, component.slug, keys),
        "status": status,
        "changed": at,
    }
    notes, opening = noted(services.store, component)
    if notes:
        told["stricter_notes"] = notes
    return Entry(
        shelf=SHELF,
        slug=component.slug,
        kind=component.kind,
        sha256=sha256,
        content=data,
        body=json_bytes(whole | told | {"sha256": sha256, "etag": f'"{sha256}"'}),
        card=json_bytes(_card(services, component, status, sha256)),
        title=f"{component.slug.replace('-', ' ')} {component.name}",
        words=_words(component),
        at=at,
        by=by,
        status=status,
        reversible=component.reversible,
        classes=classes_of(component, derive(component, services.vocabulary)),
        textures=keys,
        opening_um=micrometres(opening),
        traits=traits_of(component, services.vocabulary),
    )


def _card(services: Services, component: Component, status: str, sha256: str) -> dict[str, Any]:
    names = ("slug", "kind", "name", "summary", "reversible")
    counts = counts_json(derive(component, services.vocabulary).starts)
    told = {"status": status, "sha256": sha256, "href": f"/v1/components/{component.slug}"}
    return {name: getattr(component, name) for name in names} | counts | told


def _words(component: Component) -> str:
    rows = (version.rows for version in component.versions)
    steps = component.operation.steps if component.operation else ()
    return "\n".join((component.kind, *component.also_called, component.summary, component.gauge_notes, *rows, *steps))


def _finding(problem: Problem) -> Finding:
    line, column = (problem.place.line, problem.place.column) if problem.place else (None, None)
    rule = problem.rule or UNEXPLAINED
    return Finding(rule, "error", problem.message, problem.step, line, column, problem.pointer)


COMPONENTS = Keeping(SHELF, entry_of, retold)
latest = COMPONENTS.latest
get = COMPONENTS.get
add = COMPONENTS.add
