"""The calls of the API, each answered with a value."""

from __future__ import annotations

from collections.abc import Sequence
from typing import Any

from counterpane.client import known, plans, texts, yarns
from counterpane.client.asking import Json, step
from counterpane.client.jottings import JottingCalls
from counterpane.client.transport import Asked


class Client(JottingCalls):
    """A library at an address; `token` is needed for writing, and for reading from another machine.

    Every call may raise ClientError. Use it as a context manager, or close it.
    """

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

    def propose(self, request: Json) -> plans.Proposals:
        """Get complete recipes for a `gauge` and a `size`, the yarn at hand, skills, and what is to be avoided."""
        return plans.Proposals.of(self._post("/v1/proposals", request))

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

    def rules(self) -> tuple[known.Rule, ...]:
        """Return all rules, without reasons and examples."""
        return self._items("/v1/rules", known.Rule)

    def rule(self, slug: str) -> known.Rule:
        """Get a rule."""
        return known.Rule.of(self._get(f"/v1/rules/{step(slug)}"))

    def facts(self) -> tuple[known.Fact, ...]:
        """Return all facts, without their values."""
        return self._items("/v1/facts", known.Fact)

    def fact(self, name: str) -> known.Fact:
        """Get a fact."""
        return known.Fact.of(self._get(f"/v1/facts/{step(name)}"))

    def sizes(self) -> tuple[known.Size, ...]:
        """Return the sizes that have a name, without what each source says."""
        return self._items("/v1/sizes", known.Size)

    def size(self, name: str) -> known.Size:
        """Get a size by its name."""
        return known.Size.of(self._get(f"/v1/sizes/{step(name)}"))
