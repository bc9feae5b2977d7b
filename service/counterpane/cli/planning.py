"""From a file to a plan: what `plan`, `write` and `demo` have in common."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from dataclasses import dataclass
from typing import TYPE_CHECKING, Any

from counterpane.cli.documents import document_of
from counterpane.cli.endings import Unreadable
from counterpane.cli.inputs import read_text

if TYPE_CHECKING:
    from marshmallow import Schema

    from counterpane.craft.component import Component
    from counterpane.craft.constructions import Plan
    from counterpane.library.bench import Bench

    Find = Callable[[str], Component]
    Work = Callable[[Mapping[str, Any], Bench], Mapping[str, Any]]

HEADINGS = ("slug", "name", "summary", "status", "changed", "sha256", "etag")
"""What a recipe has beside a plan request."""

LISTED = "`counterpane parts` lists the parts that there are."

MOST_FAULTS = 5
"""Faults of a document that are said one by one; house."""


@dataclass(frozen=True, slots=True)
class Asked:
    """A plan request as it was given, and what to call it."""

    title: str | None
    content: Mapping[str, Any]


@dataclass(frozen=True, slots=True)
class Planned:
    """A plan with its answer as JSON values; without a plan the answer is the problem document that says why."""

    plan: Plan | None
    answer: Mapping[str, Any]

    @property
    def has_errors(self) -> bool:
        """Say whether there is no plan, or one with findings of severity error."""
        return self.plan is None or any(finding["severity"] == "error" for finding in self.answer["findings"])


@dataclass(frozen=True, slots=True)
class Answered:
    """An answer as JSON values; where it was refused it is the problem document that says why."""

    answer: Mapping[str, Any]
    done: bool


def read_request(where: str) -> Asked:
    """Read a plan request or a recipe; Unreadable for fields that are unknown, missing or of a wrong type."""
    given = read_text(where)
    document = document_of(given)
    _refuse_misfits(document, given.name)
    return asked_of(document)


def with_profile(asked: Asked, profile: str | None) -> Asked:
    """Return the request held against a list: the slug of one that ships with the program, or a file of one's own."""
    if profile is None:
        return asked
    named = _list_of(profile) if profile.endswith((".toml", ".json")) else profile
    child = {**(asked.content.get("for") or {}), "profile": named}
    return Asked(asked.title, {**asked.content, "for": child})


def _list_of(where: str) -> Mapping[str, Any]:
    from counterpane_schema.profile import Profile

    given = read_text(where)
    document = document_of(given)
    refuse_misfits(Profile(), document, given.name, "a list of a ward or charity")
    return document


def asked_of(document: Mapping[str, Any]) -> Asked:
    """Tell a recipe's plan request from its headings."""
    content = {name: value for name, value in document.items() if name not in HEADINGS}
    return Asked(document.get("name") or document.get("slug"), content)


def planned(content: Mapping[str, Any], find: Find) -> Planned:
    """Work out a plan over the components that are found by their slugs."""
    from counterpane.craft.constructions import CannotBePlanned
    from counterpane.library import sizes
    from counterpane.library.planning import answer_of
    from counterpane.library.plans import make_plan, plan_request_of
    from counterpane.seeding.known import load_known

    known = load_known()
    try:
        plan = make_plan(plan_request_of(sizes.sized(content, known.facts), find, known.vocabulary), known.vocabulary)
    except CannotBePlanned as refusal:
        return Planned(None, _problem(refusal))
    return Planned(plan, answer_of(plan, content, known))


def _problem(refusal: Exception) -> dict[str, Any]:
    """Return the problem document that the API would send, without the id of a request."""
    from counterpane.api import problems

    problem = problems.of(refusal)
    document = problem.document("") if problem else {"detail": str(refusal)}
    return {"findings": [], "corrections": []} | {k: value for k, value in document.items() if k != "request_id"}


def planned_over(content: Mapping[str, Any], store: str | None) -> Planned:
    """Work out a plan over the components of a library at a path, or over those that ship with the program."""
    from counterpane.library.planning import finder
    from counterpane.wiring import open_library

    if store is None:
        return planned(content, _shipped(content))
    services = open_library(store)
    try:
        return planned(content, finder(services, content))
    finally:
        services.store.close()


def answered_over(content: Mapping[str, Any], store: str | None, work: Work) -> Answered:
    """Do work that starts from a plan request over a library at a path, or over the parts that ship with the program.

    The answer is the problem document where no plan can be made.
    """
    from counterpane.craft.constructions import CannotBePlanned
    from counterpane.library.bench import Bench
    from counterpane.library.planning import finder
    from counterpane.seeding.known import load_known
    from counterpane.wiring import open_library

    services = None if store is None else open_library(store)
    find = _shipped(content) if services is None else finder(services, content)
    try:
        return Answered(work(content, Bench(find, load_known())), True)
    except CannotBePlanned as refusal:
        return Answered(_problem(refusal), False)
    finally:
        if services is not None:
            services.store.close()


def _shipped(content: Mapping[str, Any]) -> Find:
    from counterpane.library.errors import NotFound
    from counterpane.library.near import nearest
    from counterpane.library.planning import pins_of
    from counterpane.seeding import load_component, shipped

    names, pins = shipped(), pins_of(content)

    def find(slug: str) -> Component:
        if slug not in names:
            raise NotFound(f"No component is called {slug!r}.", nearest(slug, names) or LISTED)
        component = load_component(slug)
        if slug in pins and pins[slug] != _hash_of(component):
            hint = "Give the library that holds it with --store, or leave the revision out."
            raise NotFound(f"The {slug!r} that ships with the program is not the revision that is pinned.", hint)
        return component

    return find


def _hash_of(component: Component) -> str:
    from counterpane.craft.component import content_of
    from counterpane.library.objects import canonical, digest

    return digest(canonical(content_of(component)))


def _refuse_misfits(document: Mapping[str, Any], name: str) -> None:
    from counterpane_schema.plan import PlanRequest
    from counterpane_schema.recipe import RecipeContent

    is_recipe = any(heading in document for heading in HEADINGS)
    refuse_misfits(RecipeContent() if is_recipe else PlanRequest(), document, name, "a plan request")


def refuse_misfits(schema: Schema, document: Mapping[str, Any], name: str, what: str) -> None:
    """Refuse a document with fields that are unknown, missing or of a wrong type; `what` it should have been."""
    from counterpane_schema.faults import faults_of

    faults = faults_of(schema, document)
    if not faults:
        return
    said = [f"{fault.pointer or 'the whole'}: {fault.message} {fault.hint}".strip() for fault in faults[:MOST_FAULTS]]
    more = [f"and {len(faults) - MOST_FAULTS} more"] if len(faults) > MOST_FAULTS else []
    raise Unreadable(f"{name}: this is not {what}", "\n  ".join(said + more))
