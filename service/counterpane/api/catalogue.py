"""All operations of the API, in the order in which the page shows them."""

from __future__ import annotations

from counterpane.api import (
    changes,
    checks,
    components,
    extracts,
    facts,
    health,
    objects,
    patterns,
    plans,
    recipes,
    rules,
    safety,
    sheets,
    wordings,
)
from counterpane.api.operations import Operation

OPERATIONS: tuple[Operation, ...] = (
    checks.check,
    extracts.extract,
    sheets.check_sheet,
    wordings.say,
    plans.plan,
    patterns.write_pattern,
    safety.assess_safety,
    components.list_components,
    components.add_component,
    components.get_component,
    components.revise_component,
    components.list_companions,
    components.list_component_revisions,
    components.get_component_revision,
    recipes.list_recipes,
    recipes.add_recipe,
    recipes.get_recipe,
    recipes.revise_recipe,
    recipes.list_recipe_revisions,
    recipes.get_recipe_revision,
    rules.list_rules,
    rules.get_rule,
    facts.list_facts,
    facts.get_fact,
    objects.get_object,
    changes.list_changes,
    health.healthz,
    health.readyz,
    health.openapi,
)
