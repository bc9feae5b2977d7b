"""Where the parts meet: a store with the starters in it, and the application on it."""

from __future__ import annotations

from collections.abc import Callable, Iterable, Iterator, Mapping, Sequence
from contextlib import closing, suppress
from dataclasses import asdict
from functools import cache
from pathlib import Path
from typing import TYPE_CHECKING, Any

from counterpane.library.errors import Taken, Unreadable
from counterpane.library.keeping import recipes
from counterpane.library.keeping.keeping import Keeping
from counterpane.library.parts import components, traits
from counterpane.library.ports import Role, Shelf, Store, Wanted
from counterpane.library.review.tokens import create
from counterpane.library.safety import kept_profiles
from counterpane.library.services import Services, utc_now

if TYPE_CHECKING:
    from flask import Flask

    from counterpane.api.limiting import Limit
    from counterpane.craft.component import Component
    from counterpane.craft.drawing import Picture
    from counterpane.craft.language import Telling
    from counterpane.craft.pattern import Pattern
    from counterpane.press import Paper
    from counterpane.web import RulePages

IN_MEMORY = ":memory:"
STARTERS = "counterpane-starters"
HOUSE_STYLE = "counterpane"


def open_library(path: str | Path = IN_MEMORY, *, open_reading: bool = True, starters: bool = True) -> Services:
    """Open or make the library at a path, and put the starters into one that holds nothing yet.

    Raise Unreadable for a path at which no store can be, and Busy where another program holds it.
    """
    from counterpane.press.data import as_data, sheet_data
    from counterpane.press.designer import as_sheet
    from counterpane.press.graded import as_graded_text
    from counterpane.press.html import as_html
    from counterpane.press.lesson import FORMS as LESSONS
    from counterpane.press.markdown import as_markdown
    from counterpane.press.pdf import as_pdf
    from counterpane.press.text import as_text
    from counterpane.seeding import load_sources, load_vocabulary
    from counterpane.seeding.facts import facts_by_name
    from counterpane.seeding.roots import language_codes
    from counterpane.seeding.styles import load_styles

    services = Services(
        store=open_store(path),
        vocabulary=load_vocabulary(),
        facts=facts_by_name(),
        presses={"text": as_text, "markdown": as_markdown},
        pages={"html": as_html, "pdf": as_pdf},
        sheet_press=as_sheet,
        sheet_data=sheet_data,
        grade_press=as_graded_text,
        as_data=as_data,
        language_press=press_in,
        language_data=data_in,
        languages=language_codes(),
        lesson_presses=LESSONS,
        sources={source.slug: source.title for source in load_sources().values()},
        styles=load_styles(),
        open_reading=open_reading,
    )
    try:
        traits.fill(services)
        if starters:
            load_starters(services)
    except BaseException:
        services.store.close()
        raise
    return services


@cache
def telling_in(code: str) -> Telling:
    """Return what says patterns in a language; SeedFault where there is no such language."""
    from counterpane.craft.language import Telling
    from counterpane.seeding import load_vocabulary
    from counterpane.seeding.languages import load_language, messages

    return Telling(load_language(code), messages(), load_vocabulary())


def press_in(code: str, form: str, pattern: Pattern, pictures: Sequence[Picture], paper: Paper) -> bytes:
    """Return a pattern in a language and a form, as the bytes of a file."""
    from counterpane.press.translated import in_language

    return in_language(telling_in(code), form, pattern, pictures, paper)


def data_in(code: str, pattern: Pattern, pictures: Sequence[Picture]) -> Mapping[str, Any]:
    """Return a pattern in a language as JSON values, with its text."""
    from counterpane.press.translated import data_in_language

    return data_in_language(telling_in(code), pattern, pictures)


def open_store(path: str | Path) -> Store:
    """Return the store at a path; ":memory:" is one that goes with the process."""
    if str(path) == IN_MEMORY:
        from counterpane.storage.memory import MemoryStore

        return MemoryStore()
    if "://" in str(path):
        hint = "Name a file: it is made where there is none."
        raise Unreadable(f"A store at {str(path).partition('://')[0]}:// is not supported.", hint)
    from counterpane.storage.sqlite import SqliteStore

    return SqliteStore(path)


def load_starters(services: Services) -> None:
    """Put what ships with the program onto each shelf that holds nothing, all of a shelf or none.

    A library that was left between two shelves, by Ctrl-C or by an earlier version, gets the rest the next time.
    """
    from counterpane.seeding.recipes import load_recipes

    shelves: tuple[tuple[Keeping, Callable[[], Iterable[Mapping[str, Any]]]], ...] = (
        (components.COMPONENTS, _parts),
        (kept_profiles.PROFILES, _lists),
        (recipes.RECIPES, load_recipes),
    )
    for keeping, load in shelves:
        if _is_empty(services.store, keeping.shelf):
            with suppress(Taken):  # Another process was first.
                services.store.add(*(keeping.entry_of(services, each, STARTERS, "accepted") for each in load()))


def _parts() -> Iterator[Mapping[str, Any]]:
    from counterpane.craft.component import content_of
    from counterpane.seeding import load_components

    return (content_of(each) for each in load_components())


def _lists() -> Iterator[Mapping[str, Any]]:
    from counterpane.library.safety.profiles import content_of
    from counterpane.seeding.profiles import load_profiles

    return ({"slug": slug, **content_of(each)} for slug, each in load_profiles().items())


@cache
def _starters() -> Mapping[str, Component]:
    """Return the starters by slug, which examples of rules name."""
    from counterpane.seeding import load_components

    return {component.slug: component for component in load_components()}


def _is_empty(store: Store, shelf: Shelf) -> bool:
    return not store.page(Wanted(shelf, limit=1)).cards


def make_app(path: str | Path = IN_MEMORY, *, open_reading: bool = True) -> Flask:
    """Return the application on the library at a path."""
    return app_of(open_library(path, open_reading=open_reading))


def app_of(services: Services, *, logged: bool = False, limit: Limit | None = None) -> Flask:
    """Return the application on a library that is open, with the pages for people.

    Where it is logged, each request is a JSON line on standard error. With a limit, each caller has so many a minute.
    """
    from counterpane.api.access import ON_STANDARD_ERROR, SILENT
    from counterpane.api.application import create_app
    from counterpane.api.document import document
    from counterpane.api.sorts import SORTS
    from counterpane.web import pages

    shown = pages(document(), [asdict(sort) for sort in SORTS.values()], rule_pages(services))
    return create_app(services, (shown,), ON_STANDARD_ERROR if logged else SILENT, limit)


def limit_of(quota: int, accounts: str | Path) -> Limit | None:
    """Return the limit of so many requests a minute, counted in a file that several processes share; None for 0."""
    from counterpane.api.limiting import SECONDS, Limit
    from counterpane.storage.accounts import Accounts

    return Limit(quota, Accounts(accounts, SECONDS).count) if quota else None


def rule_pages(services: Services) -> RulePages:
    """Return the rules with their bad examples judged, as pages show them."""
    from counterpane.library import rules
    from counterpane.library.rule_examples import Examples
    from counterpane.web import RulePages

    examples = Examples(services.vocabulary, _starters, services.styles[HOUSE_STYLE], services.facts)
    return RulePages(rules.cards(), examples.page)


def create_token(path: str | Path, role: Role, name: str, until: str | None = None) -> str:
    """Make a token for the library at a path and return it; only its hash is kept."""
    with closing(open_library(path).store) as store:
        return create(store, role, name, utc_now(), until)
