"""Recipes over HTTP."""

from __future__ import annotations

from counterpane.api import examples
from counterpane.api.keeping import Noun, Said, Shapes, Shown
from counterpane.library.keeping import recipes
from counterpane_schema.recipe import RecipeAnswer, RecipeContent, RecipePage

RECIPES = Noun(
    recipes.RECIPES,
    Shapes(RecipeContent, RecipePage, RecipeAnswer),
    Shown(
        listed=examples.RECIPES_LISTED,
        added=examples.RECIPE_ADDED,
        one=examples.RECIPE,
        revised=examples.RECIPE_REVISED,
        revision=examples.RECIPE_REVISION,
    ),
    Said(
        added="It must make a plan as it stands. Each part that names a component is pinned to the hash given, else to "
        "the latest revision; parts left out are filled in as a plan does."
    ),
    refused=("cannot-be-kept", "cannot-be-planned", "licence-refuses", "does-not-prove"),
)
