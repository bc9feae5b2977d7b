"""The calls of the API, each answered with a value."""

from __future__ import annotations

import hashlib
import secrets
import time
from collections.abc import Callable, Iterator, Mapping, Sequence
from types import TracebackType
from typing import TYPE_CHECKING, Any, Self, TypeVar
from urllib.parse import quote

from counterpane.client import kept, known, plans, results, texts, yarns
from counterpane.client.errors import Unreadable
from counterpane.client.transport import KEY, Asked, Transport, json_of, parsed

if TYPE_CHECKING:
    import requests

T = TypeVar("T", bound=results.Result)
Json = Mapping[str, Any]


class Client:
    """A library at an address; `token` is needed for writing, and for reading from another machine.

    Every call may raise ClientError. Use it as a context manager, or close it.
    """

    def __init__(
        self,
        base: str,
        token: str | None = None,
        sleep: Callable[[float], None] = time.sleep,
        session: requests.Session | None = None,
    ) -> None:
        self._transport = Transport(base, token, sleep, session)
        self._objects: dict[str, bytes] = {}

    def __enter__(self) -> Self:
        """Return the client."""
        return self

    def __exit__(self, kind: type[BaseException] | None, error: BaseException | None, at: TracebackType | None) -> None:
        """Close the connections."""
        self.close()

    def close(self) -> None:
        """Close the connections."""
        self._transport.close()

    def check(self, text: str, cast_on: int | None = None, terms: str | None = None) -> texts.Check:
        """Check rows in words."""
        return texts.Check.of(self._post("/v1/checks", {"text": text, "cast_on": cast_on, "terms": terms}))

    def sheet(self, text: str, earlier: Json | None = None, **asked: Any) -> texts.Sheet:
        """Put what a check finds as questions, or check the `data` of an earlier sheet again.

        What is `asked` beside it, cast_on, terms and style, beats what the sheet says.
        """
        return texts.Sheet.of(self._post("/v1/sheets", {"text": text, "sheet": earlier, **asked}))

    def say(self, text: str, **how: Any) -> texts.Wording:
        """Say rows in other words: `terms`, `words` "short" or "full", `count`; `form` is "lines" or a table."""
        form = {"as": how.pop("form")} if "form" in how else {}
        return texts.Wording.of(self._post("/v1/wordings", {"text": text, **form, **how}))

    def swatches(self, request: Json) -> plans.Swatches:
        """Write the swatches of a plan request."""
        return plans.Swatches.of(self._post("/v1/swatches", request))

    def grade(self, request: Json, sizes: Sequence[Json], **asked: Any) -> plans.Grade:
        """Grade a plan request into several sizes; `borders`, `sample`, `terms` and `title` say how."""
        whole = {name: value for name, value in request.items() if name != "size"}
        return plans.Grade.of(self._post("/v1/grades", {**whole, "sizes": list(sizes), **asked}))

    def regauge(self, request: Json, to: Json | Sequence[Json]) -> plans.Regauged:
        """Take a plan request to another gauge: the same size, and the same counts."""
        return plans.Regauged.of(self._post("/v1/regauges", {**request, "to": to}))

    def gauge(self, swatches: Sequence[Json], **asked: Any) -> plans.Gauges:
        """Read swatches as they were counted; `size` and `within_cm` ask what that leaves open of a piece."""
        return plans.Gauges.of(self._post("/v1/gauges", {"swatches": list(swatches), **asked}))

    def plan(self, request: Json) -> plans.Plan:
        """Work out a plan; CannotBePlanned carries the smallest changes that help."""
        return plans.Plan.of(self._post("/v1/plans", request))

    def largest(self, request: Json) -> yarns.Largest:
        """Find the largest blanket of the yarn at hand: a plan request with `have`."""
        return yarns.Largest.of(self._post("/v1/plans/largest", request))

    def midway(self, request: Json) -> yarns.Midway:
        """Plan again from the middle of a piece: a plan request with `at`."""
        return yarns.Midway.of(self._post("/v1/plans/midway", request))

    def on_needle(self, request: Json, row: int, stitches: int | None = None) -> yarns.OnNeedle:
        """Return what a row should leave; with the stitches that were counted, where the count went wrong."""
        return yarns.OnNeedle.of(self._post("/v1/plans/row", {**request, "at": {"row": row, "stitches": stitches}}))

    def where(self, request: Json, seen: Json | None = None) -> yarns.Where:
        """Ask which row a piece is on; `seen` are the answers so far, each under the name of its question."""
        return yarns.Where.of(self._post("/v1/plans/where", {**request, "seen": seen}))

    def lesson(self, request: Json, **how: Any) -> plans.Lesson:
        """Tell a plan request for a class: `hand`, `learners`, `session_minutes`, `terms` and `title` say how."""
        return plans.Lesson.of(self._post("/v1/lessons", {**request, **how, "as": "json"}))

    def class_sheet(self, request: Json, knitters: Sequence[Json]) -> plans.ClassSheet:
        """Work out a plan request at the gauge of each knitter."""
        whole = {name: value for name, value in request.items() if name != "gauge"}
        return plans.ClassSheet.of(self._post("/v1/class-sheets", {**whole, "knitters": list(knitters)}))

    def substitute(self, yarn: Json, other: Json, amount: Json | None = None) -> yarns.Substitution:
        """Compare a yarn with another in its place, and turn an amount of it over."""
        body = {"from": yarn, "to": other, "amount": amount}
        return yarns.Substitution.of(self._post("/v1/yarns/substitutes", body))

    def pattern(self, request: Json) -> plans.Pattern:
        """Write a pattern, as data and as a text."""
        return plans.Pattern.of(self._post("/v1/patterns", {**request, "as": "json"}))

    def pattern_text(self, request: Json, form: str = "text") -> str:
        """Write a pattern as "text" or "markdown"."""
        asked = Asked("POST", "/v1/patterns", body={**request, "as": form}, headers={"Accept": "*/*"})
        return self._transport.send(asked).content.decode()

    def safety(self, inputs: Json) -> plans.Safety:
        """Assess what is known of a piece; what is not sent is not known."""
        return plans.Safety.of(self._post("/v1/safety", inputs))

    def label(self, yarns: Sequence[Json], **asked: Any) -> plans.Label:
        """Work out the label of a piece of these yarns; asked may be mass, places, markets, claims and stated."""
        return plans.Label.of(self._post("/v1/labels", {"yarns": list(yarns), **asked}))

    def components(self, **filters: Any) -> Iterator[kept.ComponentCard]:
        """Give the components that pass the filters (kind, admits, q, reversible, status), over all pages."""
        return self._pages("/v1/components", filters, kept.ComponentCard)

    def companions(self, slug: str, **filters: Any) -> Iterator[kept.Companion]:
        """Give what fits a component at a `count`, of a `kind` or of all others, over all pages."""
        return self._pages(f"/v1/components/{_step(slug)}/companions", filters, kept.Companion)

    def alike(self, slug: str, **filters: Any) -> kept.AlikeList:
        """Get the components whose texture is like that of another, of which `percent` of the stitches agree."""
        return kept.AlikeList.of(self._get(f"/v1/components/{_step(slug)}/alike", filters))

    def component(self, slug: str) -> kept.Component:
        """Get the latest revision of a component."""
        return kept.Component.of(self._get(f"/v1/components/{_step(slug)}"))

    def add_component(self, content: Json) -> kept.Component:
        """Add a component; DoesNotProve carries findings."""
        return kept.Component.of(self._post("/v1/components", content))

    def adopt(self, text: str, **said: Any) -> kept.Component:
        """Add a component from its words and what is `said` of it: kind, name, licence, author, source and so on.

        Incomplete asks for what does not follow from the words; DoesNotProve carries findings with their places.
        """
        return self.add_component({"text": text, **said})

    def revise_component(self, content: Json, etag: str) -> kept.Component:
        """Make the next revision of a component; `etag` is that of the revision which was changed."""
        return kept.Component.of(self._put(f"/v1/components/{_step(content['slug'])}", content, etag))

    def component_revisions(self, slug: str) -> tuple[kept.Revision, ...]:
        """Return all revisions of a component, oldest first."""
        return self._items(f"/v1/components/{_step(slug)}/revisions", kept.Revision)

    def standing(self, slug: str, shelf: str = "components") -> kept.Standing:
        """Tell where each revision of a component stands, or of what else `shelf` names."""
        return kept.Standing.of(self._get(f"/v1/{shelf}/{_step(slug)}/standing"))

    def move(self, slug: str, to: str, because: str, say: str, shelf: str = "components", **more: Any) -> kept.Standing:
        """Move a revision, the latest if none is named; the reason is a code of `/v1/reasons` and a sentence."""
        body = {"to": to, "because": because, "say": say, **more}
        return kept.Standing.of(self._post(f"/v1/{shelf}/{_step(slug)}/standing", body))

    def submit(self, say: str = "", **about: str) -> kept.Submission:
        """Hand in the latest revision of a `component` or `recipe` that one added."""
        return kept.Submission.of(self._post("/v1/submissions", {**about, "say": say}))

    def report_safety(self, say: str, **about: str) -> kept.Submission:
        """Report that a `component` or `recipe` may hurt a baby."""
        return kept.Submission.of(self._post("/v1/safety-reports", {**about, "say": say}))

    def submissions(self, **filters: Any) -> Iterator[kept.SubmissionCard]:
        """Give what waits for somebody (filters: lane, turn, slug), over all pages."""
        return self._pages("/v1/submissions", filters, kept.SubmissionCard)

    def decide(self, number: int, decision: str, because: str, say: str) -> kept.Submission:
        """Decide about a submission or a report, with a code and a sentence."""
        body = {"decision": decision, "because": because, "say": say}
        return kept.Submission.of(self._post(f"/v1/submissions/{number}/decisions", body))

    def used_in(self, slug: str) -> kept.UsedIn:
        """Tell how many recipes use a component, and which revision each pins."""
        return kept.UsedIn.of(self._get(f"/v1/components/{_step(slug)}/used-in"))

    def outdated(self, slug: str) -> kept.Outdated:
        """Tell which parts of a recipe have successors, and what an upgrade would change."""
        return kept.Outdated.of(self._get(f"/v1/recipes/{_step(slug)}/outdated"))

    def recipes(self, **filters: Any) -> Iterator[kept.RecipeCard]:
        """Give the recipes that pass the filters (q, status), over all pages."""
        return self._pages("/v1/recipes", filters, kept.RecipeCard)

    def recipe(self, slug: str) -> kept.Recipe:
        """Get the latest revision of a recipe."""
        return kept.Recipe.of(self._get(f"/v1/recipes/{_step(slug)}"))

    def add_recipe(self, content: Json) -> kept.Recipe:
        """Add a recipe; CannotBePlanned carries the smallest changes that help."""
        return kept.Recipe.of(self._post("/v1/recipes", content))

    def revise_recipe(self, content: Json, etag: str) -> kept.Recipe:
        """Make the next revision of a recipe; `etag` is that of the revision which was changed."""
        return kept.Recipe.of(self._put(f"/v1/recipes/{_step(content['slug'])}", content, etag))

    def recipe_revisions(self, slug: str) -> tuple[kept.Revision, ...]:
        """Return all revisions of a recipe, oldest first."""
        return self._items(f"/v1/recipes/{_step(slug)}/revisions", kept.Revision)

    def editions(self, slug: str) -> tuple[kept.EditionCard, ...]:
        """Return the editions of a recipe, the first one first."""
        return self._items(f"/v1/recipes/{_step(slug)}/editions", kept.EditionCard)

    def edition(self, slug: str, number: int) -> kept.Edition:
        """Get an edition of a recipe."""
        return kept.Edition.of(self._get(f"/v1/recipes/{_step(slug)}/editions/{number}"))

    def publish(self, slug: str, **said: Any) -> kept.Edition:
        """Publish the next edition of a recipe: `date`, `revision`, `reason`, `note` and `sizes` may be said."""
        return kept.Edition.of(self._post(f"/v1/recipes/{_step(slug)}/editions", said))

    def touched(self, slug: str, **filters: Any) -> Iterator[kept.Touched]:
        """Give the recipes and editions that pin an older revision of a component, over all pages."""
        return self._pages(f"/v1/components/{_step(slug)}/touched", filters, kept.Touched)

    def profiles(self, **filters: Any) -> Iterator[kept.ProfileCard]:
        """Give the lists of wards and charities that pass the filters (q, status), over all pages."""
        return self._pages("/v1/profiles", filters, kept.ProfileCard)

    def profile(self, slug: str) -> kept.Profile:
        """Get the latest revision of a list."""
        return kept.Profile.of(self._get(f"/v1/profiles/{_step(slug)}"))

    def add_profile(self, content: Json) -> kept.Profile:
        """Add a list; NotUsable points at what does not hold."""
        return kept.Profile.of(self._post("/v1/profiles", content))

    def revise_profile(self, content: Json, etag: str) -> kept.Profile:
        """Make the next revision of a list; `etag` is that of the revision which was changed."""
        return kept.Profile.of(self._put(f"/v1/profiles/{_step(content['slug'])}", content, etag))

    def profile_revisions(self, slug: str) -> tuple[kept.Revision, ...]:
        """Return all revisions of a list, oldest first."""
        return self._items(f"/v1/profiles/{_step(slug)}/revisions", kept.Revision)

    def rules(self) -> tuple[known.Rule, ...]:
        """Return all rules, without reasons and examples."""
        return self._items("/v1/rules", known.Rule)

    def rule(self, slug: str) -> known.Rule:
        """Get a rule."""
        return known.Rule.of(self._get(f"/v1/rules/{_step(slug)}"))

    def facts(self) -> tuple[known.Fact, ...]:
        """Return all facts, without their values."""
        return self._items("/v1/facts", known.Fact)

    def fact(self, name: str) -> known.Fact:
        """Get a fact."""
        return known.Fact.of(self._get(f"/v1/facts/{_step(name)}"))

    def sizes(self) -> tuple[known.Size, ...]:
        """Return the sizes that have a name, without what each source says."""
        return self._items("/v1/sizes", known.Size)

    def size(self, name: str) -> known.Size:
        """Get a size by its name."""
        return known.Size.of(self._get(f"/v1/sizes/{_step(name)}"))

    def object(self, sha256: str, keep: bool = True) -> bytes:
        """Return the canonical bytes of a revision, fetched once; Unreadable where they are not those of the hash.

        Without `keep` they are fetched each time.
        """
        if sha256 not in self._objects:
            content = self._transport.send(Asked("GET", f"/v1/objects/sha256/{_step(sha256)}")).content
            if hashlib.sha256(content).hexdigest() != sha256:
                raise Unreadable(f"The object {sha256} came with other bytes.")
            if not keep:
                return content
            self._objects[sha256] = content
        return self._objects[sha256]

    def changes(self, after: int = 0) -> Iterator[kept.Change]:
        """Give what was written after a number, to the end."""
        while True:
            asked = Asked("GET", "/v1/changes", {"after": after}, headers={"Accept": "application/x-ndjson"})
            lines = self._transport.send(asked).content.splitlines()
            for line in lines:
                told = parsed(line, "/v1/changes")
                if not isinstance(told, dict):
                    raise Unreadable(f"A line of the history is no object: {line[:80]!r}.")
                change = kept.Change.of(told)
                after = change.seq
                yield change
            if not lines:
                return

    def _get(self, path: str, params: Json | None = None) -> Json:
        data: Json = json_of(self._transport.send(Asked("GET", path, params)))
        return data

    def _post(self, path: str, body: Json) -> Json:
        # The key is made before the first try: what an earlier try wrote is then not written again.
        key = {KEY: secrets.token_urlsafe(24)}
        data: Json = json_of(self._transport.send(Asked("POST", path, body=body, headers=key)))
        return data

    def _put(self, path: str, body: Json, etag: str) -> Json:
        data: Json = json_of(self._transport.send(Asked("PUT", path, body=body, headers={"If-Match": etag})))
        return data

    def _items(self, path: str, sort: type[T]) -> tuple[T, ...]:
        return tuple(sort.of(each) for each in self._get(path)["items"])

    def _pages(self, path: str | None, params: Json | None, sort: type[T]) -> Iterator[T]:
        while path:
            page = self._get(path, params)
            yield from (sort.of(each) for each in page["items"])
            path, params = page["next"], None
            if path and not path.startswith("/"):
                raise Unreadable(f"The next page lies elsewhere: {path}.")


def _step(name: str) -> str:
    return quote(name, safe="")
