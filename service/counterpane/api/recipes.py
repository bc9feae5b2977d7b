"""Recipes over HTTP."""

from __future__ import annotations

from counterpane.api import examples, kept
from counterpane.api.operations import Answer, Call, operation
from counterpane.library import recipes
from counterpane_schema.recipe import RecipeAnswer, RecipeContent, RecipePage, RecipeQuery
from counterpane_schema.revision import RevisionList

PATH = "/v1/recipes"
ONE = f"{PATH}/<slug>"
TAG = "recipes"
UNPROVED = ("cannot-be-kept", "cannot-be-planned", "does-not-prove")


def _current(call: Call) -> str:
    return recipes.get(call.services, call.path["slug"]).sha256


@operation("GET", PATH, tag=TAG, answer=RecipePage, query=RecipeQuery, role="reader", examples=examples.RECIPES_LISTED)
def list_recipes(call: Call) -> Answer:
    """List recipes."""
    return kept.listed(call, "recipe", PATH)


@operation(
    "POST",
    PATH,
    tag=TAG,
    answer=RecipeAnswer,
    status=201,
    body=RecipeContent,
    role="contributor",
    tagged=True,
    problems=("taken", *UNPROVED),
    examples=examples.RECIPE_ADDED,
)
def add_recipe(call: Call) -> Answer:
    """Add a recipe.

    It must make a plan as it stands. Each part that names a component is pinned to the hash given, else to the latest
    revision; parts left out are filled in as a plan does.
    """
    return kept.added(recipes.add(call.services, call.body, call.by), PATH)


@operation("GET", ONE, tag=TAG, answer=RecipeAnswer, role="reader", tagged=True, examples=examples.RECIPE)
def get_recipe(call: Call) -> Answer:
    """Get the latest revision of a recipe."""
    return kept.shown(recipes.get(call.services, call.path["slug"]))


@operation(
    "PUT",
    ONE,
    tag=TAG,
    answer=RecipeAnswer,
    body=RecipeContent,
    role="contributor",
    tagged=True,
    current=_current,
    problems=UNPROVED,
    examples=examples.RECIPE_REVISED,
)
def revise_recipe(call: Call) -> Answer:
    """Make the next revision of a recipe.

    The header If-Match names the revision that is changed. The same content again changes nothing.
    """
    return kept.shown(recipes.revise(call.services, call.path["slug"], call.body, call.expected, call.by))


@operation("GET", f"{ONE}/revisions", tag=TAG, answer=RevisionList, role="reader", examples=examples.RECIPE)
def list_recipe_revisions(call: Call) -> Answer:
    """List all revisions of a recipe, oldest first."""
    return kept.history(recipes.history(call.services, call.path["slug"]), f"{PATH}/{call.path['slug']}")


@operation(
    "GET",
    f"{ONE}/revisions/<sha256>",
    tag=TAG,
    answer=RecipeAnswer,
    role="reader",
    tagged=True,
    examples=examples.RECIPE_REVISION,
)
def get_recipe_revision(call: Call) -> Answer:
    """Get one revision of a recipe by its hash."""
    return kept.shown(recipes.revision(call.services, call.path["slug"], call.path["sha256"]))
