"""From a file to a plan: what `plan`, `write` and `demo` have in common."""

from __future__ import annotations

from collections.abc import Callable, Iterator, Mapping, Sequence
from contextlib import contextmanager
from dataclasses import dataclass
from typing import TYPE_CHECKING, Any

from counterpane.cli.documents import document_of
from counterpane.cli.endings import Unreadable
from counterpane.cli.inputs import read_text

if TYPE_CHECKING:
    from marshmallow import Schema

    from counterpane.craft.component import Component
    from counterpane.craft.constructions import Plan
    from counterpane.library.plans.bench import Bench
    from counterpane_schema.faults import Fault

    Find = Callable[[str], Component]
    Work = Callable[[Mapping[str, Any], Bench], Mapping[str, Any]]

HEADINGS = ("slug", "name", "summary", "status", "changed", "sha256", "etag", "standing")
"""What a recipe has beside a plan request."""

A_LIST = "a list of a ward or charity"
LISTED = "`counterpane find` lists the parts that there are."

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
    """Return the request held against a list: the slug of one that ships or is kept, or a file of one's own."""
    if profile is None:
        return asked
    named = _list_of(profile) if profile.endswith((".toml", ".json")) else profile
    child = {**(asked.content.get("for") or {}), "profile": named}
    return Asked(asked.title, {**asked.content, "for": child})


def _list_of(where: str) -> Mapping[str, Any]:
    from counterpane_schema.profile import Profile

    given = read_text(where)
    document = document_of(given)
    refuse_misfits(Profile(), document, given.name, A_LIST)
    return document


def asked_of(document: Mapping[str, Any]) -> Asked:
    """Tell a recipe's plan request from its headings."""
    content = {name: value for name, value in document.items() if name not in HEADINGS}
    return Asked(document.get("name") or document.get("slug"), content)


@contextmanager
def bench_over(content: Mapping[str, Any], store: str | None) -> Iterator[Bench]:
    """Lay out what planning needs, from a library at a path or from what ships with the program, for a block."""
    from counterpane.library.plans.bench import Bench, bench_of
    from counterpane.seeding.known import load_known
    from counterpane.wiring import open_library

    if store is None:
        yield Bench(_shipped(content), load_known())
        return
    services = open_library(store)
    try:
        yield bench_of(services, content)
    finally:
        services.store.close()


def planned(content: Mapping[str, Any], bench: Bench) -> Planned:
    """Work out a plan of what lies on a bench."""
    from counterpane.craft.constructions import CannotBePlanned
    from counterpane.library.plans.planning import answer_of

    try:
        plan = bench.made(content)
    except CannotBePlanned as refusal:
        return Planned(None, problem_document(refusal))
    return Planned(plan, answer_of(plan, content, bench.known))


def problem_document(refusal: Exception) -> dict[str, Any]:
    """Return the problem document that the API would send, without the id of a request."""
    from counterpane.api import problems

    problem = problems.of(refusal)
    document = problem.document("") if problem else {"detail": str(refusal)}
    return {"findings": [], "corrections": []} | {k: value for k, value in document.items() if k != "request_id"}


def answered_over(content: Mapping[str, Any], store: str | None, work: Work) -> Answered:
    """Do work that starts from a plan request over a library at a path, or over what ships with the program.

    The answer is the problem document where no plan can be made.
    """
    from counterpane.craft.constructions import CannotBePlanned

    with bench_over(content, store) as bench:
        try:
            return Answered(work(content, bench), True)
        except CannotBePlanned as refusal:
            return Answered(problem_document(refusal), False)


def _shipped(content: Mapping[str, Any]) -> Find:
    from counterpane.library.errors import NotFound
    from counterpane.library.near import nearest
    from counterpane.library.plans.planning import pins_of
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
    from counterpane.library.keeping.objects import canonical, digest

    return digest(canonical(content_of(component)))


def _refuse_misfits(document: Mapping[str, Any], name: str) -> None:
    from counterpane_schema.plan import PlanRequest
    from counterpane_schema.recipe import RecipeContent

    is_recipe = any(heading in document for heading in HEADINGS)
    refuse_misfits(RecipeContent() if is_recipe else PlanRequest(), document, name, "a plan request")


def refuse_plan(document: Mapping[str, Any], name: str, takes: str, instead: str) -> None:
    """Raise Unreadable for a plan request where something else is asked for; `instead` says how to go on."""
    if "parts" in document:
        raise Unreadable(f"{name}: this is a plan request, and {takes} is asked for here", instead)


def refuse_misfits(schema: Schema, document: Mapping[str, Any], name: str, what: str) -> None:
    """Refuse a document with fields that are unknown, missing or of a wrong type; `what` it should have been."""
    from counterpane_schema.faults import faults_of

    faults = faults_of(schema, document)
    if not faults:
        return
    said = list(_said(faults[:MOST_FAULTS]))
    more = [f"and {len(faults) - MOST_FAULTS} more"] if len(faults) > MOST_FAULTS else []
    raise Unreadable(f"{name}: this is not {what}", "\n  ".join(said + more))


def _said(faults: Sequence[Fault]) -> Iterator[str]:
    """Say each fault with its hint, a hint that several share once."""
    given = {""}
    for fault in faults:
        hint = "" if fault.hint in given else f" {fault.hint}"
        given.add(fault.hint)
        yield f"{fault.pointer or 'the whole'}: {fault.message}{hint}"


def show_refusal(asked: Asked, made: Planned) -> int:
    """Show why no plan can be made, with the smallest changes that make one; return the exit status."""
    from counterpane.cli import endings, output
    from counterpane.cli.showing import plans

    with output.page() as console:
        plans.draw_refusal(console, asked.title or "A blanket", made.answer)
    return endings.FOUND
