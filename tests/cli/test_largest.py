"""`counterpane largest`."""

from __future__ import annotations

import json
import re

from counterpane.api.examples import IN_YARN
from counterpane.library.plans.bench import bench_of
from counterpane.library.yarn.yarn_planning import plan_largest
from counterpane.wiring import open_library

from .conftest import Type

REQUEST = json.dumps(IN_YARN)


def test_the_json_is_what_the_api_answers(typed: Type):
    """Both say the same of the same request."""
    library = open_library()
    request = IN_YARN | {"have": {"balls": 7}, "keep": "width"}
    done = typed("largest", "-", "--balls", "7", "--keep", "width", "--json", stdin=REQUEST)
    answer = plan_largest(request, bench_of(library, request))
    assert (done.status, json.loads(done.out)) == (0, json.loads(json.dumps(answer)))


def test_a_person_reads_the_size_first(typed: Type):
    """Then what it takes."""
    done = typed("largest", "-", "--grams", "350", stdin=REQUEST)
    assert done.status == 0
    assert re.search(r"The largest for which the yarn is enough: \d+\.\d by \d+\.\d cm\.", done.out)
    assert "Buy 7 balls" in done.out


def test_too_little_ends_with_1_and_the_reason(typed: Type):
    """As a plan that cannot be made."""
    done = typed("largest", "-", "--grams", "3", stdin=REQUEST)
    assert done.status == 1 and "not-enough-yarn" in done.out
    problem = json.loads(typed("largest", "-", "--grams", "3", "--json", stdin=REQUEST).out)
    assert problem["findings"][0]["rule"] == "not-enough-yarn"


def test_an_amount_is_wanted(typed: Type):
    """Without one, or with one that is none, nothing can be said."""
    assert typed("largest", "-", stdin=REQUEST).status == 2
    for amount in ("0", "-5", "1e3", "a lot", "9" * 30):
        assert typed("largest", "-", "--grams", amount, stdin=REQUEST).status == 2
