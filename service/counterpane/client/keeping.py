"""The calls about what a library keeps: components, recipes, lists, their states and reviews, and its history."""

from __future__ import annotations

import hashlib
from collections.abc import Iterator
from typing import Any

from counterpane.client import kept
from counterpane.client.asking import Asking, Json, step
from counterpane.client.errors import Unreadable
from counterpane.client.transport import Asked, parsed


class KeptCalls(Asking):
    """What a library keeps."""

    def components(self, **filters: Any) -> Iterator[kept.ComponentCard]:
        """Give the components that pass the filters (kind, admits, q, reversible, status), over all pages."""
        return self._pages("/v1/components", filters, kept.ComponentCard)

    def find(self, words: str = "", **asked: Any) -> Iterator[kept.FoundCard]:
        """Give the components that hold all words and answer what is asked, over all pages.

        `asked` are members of the query: kind, admits, width_cm with gauge ("60..80", "21x28"), row_repeat, reversible,
        lies_flat, openings_under_mm, yarn_class, difficulty, licence, source, year, like, goes_with and so on.
        """
        return self._pages("/v1/components", {**asked, **({"q": words} if words else {})}, kept.FoundCard)

    def facets(self, words: str = "", **asked: Any) -> kept.Facets:
        """Count what `find` finds, under each facet."""
        query = {**asked, **({"q": words} if words else {}), "facets": "yes", "limit": 1}
        return kept.Facets.of(self._get("/v1/components", query)["facets"])

    def companions(self, slug: str, **filters: Any) -> Iterator[kept.Companion]:
        """Give what fits a component at a `count`, of a `kind` or of all others, over all pages."""
        return self._pages(f"/v1/components/{step(slug)}/companions", filters, kept.Companion)

    def alike(self, slug: str, **filters: Any) -> kept.AlikeList:
        """Get the components whose texture is like that of another, of which `percent` of the stitches agree."""
        return kept.AlikeList.of(self._get(f"/v1/components/{step(slug)}/alike", filters))

    def component(self, slug: str) -> kept.Component:
        """Get the latest revision of a component."""
        return kept.Component.of(self._get(f"/v1/components/{step(slug)}"))

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
        return kept.Component.of(self._put(f"/v1/components/{step(content['slug'])}", content, etag))

    def component_revisions(self, slug: str) -> tuple[kept.Revision, ...]:
        """Return all revisions of a component, oldest first."""
        return self._items(f"/v1/components/{step(slug)}/revisions", kept.Revision)

    def standing(self, slug: str, shelf: str = "components") -> kept.Standing:
        """Tell where each revision of a component stands, or of what else `shelf` names."""
        return kept.Standing.of(self._get(f"/v1/{shelf}/{step(slug)}/standing"))

    def move(self, slug: str, to: str, because: str, say: str, shelf: str = "components", **more: Any) -> kept.Standing:
        """Move a revision, the latest if none is named; the reason is a code of `/v1/reasons` and a sentence."""
        body = {"to": to, "because": because, "say": say, **more}
        return kept.Standing.of(self._post(f"/v1/{shelf}/{step(slug)}/standing", body))

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
        return kept.UsedIn.of(self._get(f"/v1/components/{step(slug)}/used-in"))

    def outdated(self, slug: str) -> kept.Outdated:
        """Tell which parts of a recipe have successors, and what an upgrade would change."""
        return kept.Outdated.of(self._get(f"/v1/recipes/{step(slug)}/outdated"))

    def recipes(self, **filters: Any) -> Iterator[kept.RecipeCard]:
        """Give the recipes that pass the filters (q, status), over all pages."""
        return self._pages("/v1/recipes", filters, kept.RecipeCard)

    def recipe(self, slug: str) -> kept.Recipe:
        """Get the latest revision of a recipe."""
        return kept.Recipe.of(self._get(f"/v1/recipes/{step(slug)}"))

    def add_recipe(self, content: Json) -> kept.Recipe:
        """Add a recipe; CannotBePlanned carries the smallest changes that help."""
        return kept.Recipe.of(self._post("/v1/recipes", content))

    def revise_recipe(self, content: Json, etag: str) -> kept.Recipe:
        """Make the next revision of a recipe; `etag` is that of the revision which was changed."""
        return kept.Recipe.of(self._put(f"/v1/recipes/{step(content['slug'])}", content, etag))

    def recipe_revisions(self, slug: str) -> tuple[kept.Revision, ...]:
        """Return all revisions of a recipe, oldest first."""
        return self._items(f"/v1/recipes/{step(slug)}/revisions", kept.Revision)

    def editions(self, slug: str) -> tuple[kept.EditionCard, ...]:
        """Return the editions of a recipe, the first one first."""
        return self._items(f"/v1/recipes/{step(slug)}/editions", kept.EditionCard)

    def edition(self, slug: str, number: int) -> kept.Edition:
        """Get an edition of a recipe."""
        return kept.Edition.of(self._get(f"/v1/recipes/{step(slug)}/editions/{number}"))

    def publish(self, slug: str, **said: Any) -> kept.Edition:
        """Publish the next edition of a recipe: `date`, `revision`, `reason`, `note` and `sizes` may be said."""
        return kept.Edition.of(self._post(f"/v1/recipes/{step(slug)}/editions", said))

    def touched(self, slug: str, **filters: Any) -> Iterator[kept.Touched]:
        """Give the recipes and editions that pin an older revision of a component, over all pages."""
        return self._pages(f"/v1/components/{step(slug)}/touched", filters, kept.Touched)

    def profiles(self, **filters: Any) -> Iterator[kept.ProfileCard]:
        """Give the lists of wards and charities that pass the filters (q, status), over all pages."""
        return self._pages("/v1/profiles", filters, kept.ProfileCard)

    def profile(self, slug: str) -> kept.Profile:
        """Get the latest revision of a list."""
        return kept.Profile.of(self._get(f"/v1/profiles/{step(slug)}"))

    def add_profile(self, content: Json) -> kept.Profile:
        """Add a list; NotUsable points at what does not hold."""
        return kept.Profile.of(self._post("/v1/profiles", content))

    def revise_profile(self, content: Json, etag: str) -> kept.Profile:
        """Make the next revision of a list; `etag` is that of the revision which was changed."""
        return kept.Profile.of(self._put(f"/v1/profiles/{step(content['slug'])}", content, etag))

    def profile_revisions(self, slug: str) -> tuple[kept.Revision, ...]:
        """Return all revisions of a list, oldest first."""
        return self._items(f"/v1/profiles/{step(slug)}/revisions", kept.Revision)

    def object(self, sha256: str, keep: bool = True) -> bytes:
        """Return the canonical bytes of a revision; Unreadable where they are not those of the hash.

        They are remembered, the last thousand of them, 32 MiB at most. Without `keep` they are fetched each time.
        """
        held = self._objects.get(sha256) if keep else None
        if held is not None:
            return held
        content = self._transport.send(Asked("GET", f"/v1/objects/sha256/{step(sha256)}")).content
        if hashlib.sha256(content).hexdigest() != sha256:
            raise Unreadable(f"The object {sha256} came with other bytes.")
        if keep:
            self._objects.keep(sha256, content)
        return content

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
