"""Where the parts meet: a store with the starters in it, the application on it, and a server before that."""

from __future__ import annotations

import os
import socket
from collections.abc import Callable, Iterable, Iterator, Mapping, Sequence
from contextlib import closing, suppress
from dataclasses import asdict, dataclass, replace
from functools import cache
from pathlib import Path
from typing import TYPE_CHECKING, Any

from counterpane.library.errors import LibraryError, Taken, Unreadable
from counterpane.library.keeping import recipes
from counterpane.library.keeping.keeping import Keeping
from counterpane.library.parts import components, traits
from counterpane.library.ports import Role, Shelf, Store, Wanted
from counterpane.library.review.tokens import create
from counterpane.library.safety import kept_profiles
from counterpane.library.services import Services, utc_now

if TYPE_CHECKING:
    from flask import Flask

    from counterpane.craft.component import Component
    from counterpane.craft.drawing import Picture
    from counterpane.craft.language import Telling
    from counterpane.craft.pattern import Pattern
    from counterpane.press import Paper
    from counterpane.web import RulePages

IN_MEMORY = ":memory:"
LOOPBACK = ("127.0.0.1", "::1", "localhost")
STORE_VARIABLE = "COUNTERPANE_SERVED_STORE"
OPEN_VARIABLE = "COUNTERPANE_SERVED_OPEN"
READERS_VARIABLE = "COUNTERPANE_SERVED_READERS_AT"
STARTERS = "counterpane-starters"
HOUSE_STYLE = "counterpane"
WAITRESS_THREADS = 8
STOP_SECONDS = 3


class CannotServe(LibraryError):
    """The server cannot be started as asked."""

    hint = "Install what is missing, or choose another server with --server."


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


def app_of(services: Services, *, logged: bool = False) -> Flask:
    """Return the application on a library that is open, with the pages for people.

    Where it is logged, each request is a JSON line on standard error.
    """
    from counterpane.api.access import ON_STANDARD_ERROR, SILENT
    from counterpane.api.application import create_app
    from counterpane.api.document import document
    from counterpane.api.sorts import SORTS
    from counterpane.web import pages

    shown = pages(document(), [asdict(sort) for sort in SORTS.values()], rule_pages(services))
    return create_app(services, (shown,), ON_STANDARD_ERROR if logged else SILENT)


def rule_pages(services: Services) -> RulePages:
    """Return the rules with their bad examples judged, as pages show them."""
    from counterpane.library import rules
    from counterpane.library.rule_examples import Examples
    from counterpane.web import RulePages

    examples = Examples(services.vocabulary, _starters, services.styles[HOUSE_STYLE], services.facts)
    return RulePages(rules.cards(), examples.page)


def served_app() -> Flask:
    """Return the application as a server's worker makes it: the path stands in the environment."""
    services = open_library(os.environ[STORE_VARIABLE], open_reading=os.environ[OPEN_VARIABLE] == "yes")
    return app_of(replace(services, address=os.environ.get(READERS_VARIABLE, "")), logged=True)


def create_token(path: str | Path, role: Role, name: str, until: str | None = None) -> str:
    """Make a token for the library at a path and return it; only its hash is kept."""
    with closing(open_library(path).store) as store:
        return create(store, role, name, utc_now(), until)


@dataclass(frozen=True, slots=True)
class Serving:
    """What to serve, where, and how: by "granian" with workers and threads, or by "waitress" with threads."""

    store: str
    host: str = "127.0.0.1"
    port: int = 8321
    server: str = "granian"
    workers: int = 2
    threads: int = 2
    readers_at: str = ""

    @property
    def open_reading(self) -> bool:
        """Reading is open where only this machine can ask."""
        return self.host in LOOPBACK

    @property
    def address(self) -> str:
        """The address that a browser takes."""
        return f"http://{f'[{self.host}]' if ':' in self.host else self.host}:{self.port}"


def serve(serving: Serving, announce: Callable[[str], None]) -> None:
    """Serve a library until the process is interrupted; `announce` is told the address once it listens.

    Port 0 is a free one. Raise CannotServe, and what `open_library` raises.
    """
    serving = replace(serving, port=serving.port or free_port(serving.host))
    _refuse_taken(serving)
    open_library(serving.store).store.close()  # The starters are in before any worker opens it.
    start = _serve_waitress if serving.server == "waitress" else _serve_granian
    start(serving, lambda: announce(serving.address))


def _refuse_taken(serving: Serving) -> None:
    with socket.socket(socket.AF_INET6 if ":" in serving.host else socket.AF_INET) as probe:
        probe.setsockopt(socket.SOL_SOCKET, socket.SO_REUSEADDR, 1)
        try:
            probe.bind((serving.host, serving.port))
        except (OSError, OverflowError) as fault:
            hint = "Choose another port with --port, or end what listens there."
            raise CannotServe(f"{serving.address} cannot be listened on: {fault}.", hint) from None


def free_port(host: str) -> int:
    """Return a port that is free at this moment."""
    with socket.socket(socket.AF_INET6 if ":" in host else socket.AF_INET) as probe:
        probe.bind((host, 0))
        return int(probe.getsockname()[1])


def _serve_granian(serving: Serving, ready: Callable[[], None]) -> None:
    try:
        from granian import Granian
        from granian.constants import Interfaces
    except ImportError:
        raise CannotServe("granian is not installed.", "Use --server waitress.") from None
    in_memory = serving.store == IN_MEMORY
    os.environ[STORE_VARIABLE] = IN_MEMORY if in_memory else str(Path(serving.store).resolve())
    os.environ |= {OPEN_VARIABLE: "yes" if serving.open_reading else "no", READERS_VARIABLE: serving.readers_at}
    granian = Granian(
        "counterpane.wiring:served_app",
        address=serving.host,
        port=serving.port,
        interface=Interfaces.WSGI,
        workers=1 if in_memory else serving.workers,  # A store in memory belongs to one process.
        blocking_threads=serving.threads,
        factory=True,
        workers_kill_timeout=STOP_SECONDS,  # A worker that is asked to stop while it starts does not hear it.
        log_enabled=False,
    )
    granian.on_startup(ready)  # No thread may run here: the workers are forked, and would inherit its locks.
    granian.serve()


def _serve_waitress(serving: Serving, ready: Callable[[], None]) -> None:
    try:
        from waitress.server import create_server
    except ImportError:
        raise CannotServe("waitress is not installed.", "Use --server granian.") from None
    services = open_library(serving.store, open_reading=serving.open_reading)
    app = app_of(replace(services, address=serving.readers_at), logged=True)
    waiting = create_server(app, host=serving.host, port=serving.port, threads=max(serving.threads, WAITRESS_THREADS))
    ready()
    waiting.run()
