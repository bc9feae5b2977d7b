"""`counterpane midway`."""

from __future__ import annotations

import json

from counterpane.api.examples import IN_YARN
from counterpane.library.plans.bench import bench_of
from counterpane.library.yarn.yarn_planning import plan_midway
from counterpane.wiring import open_library

from .conftest import Type

REQUEST = json.dumps(IN_YARN)


def test_the_json_is_what_the_api_answers(typed: Type):
    """Both say the same of the same request."""
    library = open_library()
    at = {"rows_done": 60, "left_g": 260, "used_g": 75, "measured": {"width_cm": 72, "length_cm": 14.6, "rows": 44}}
    request = IN_YARN | {"at": at}
    options = "--rows-done 60 --left-g 260 --used-g 75 --width-cm 72 --length-cm 14.6 --over-rows 44 --json".split()
    done = typed("midway", "-", *options, stdin=REQUEST)
    answer = plan_midway(request, bench_of(library, request))
    assert (done.status, json.loads(done.out)) == (0, json.loads(json.dumps(answer)))


def test_a_person_reads_the_rows_left_and_the_mass_at_which_to_start_the_top(typed: Type):
    """And what the figures rest on."""
    done = typed("midway", "-", "--rows-done", "112", "--left-g", "210", "--used-g", "152", stdin=REQUEST)
    assert done.status == 0
    for words in ("The yarn does for", "Start what follows when the yarn weighs", "what this piece has taken"):
        assert words in done.out


def test_a_person_reads_the_gauge_that_came_out_and_the_rows_anew(typed: Type):
    """Beside the gauge as planned."""
    done = typed("midway", "-", "--rows-done", "60", "--width-cm", "72", stdin=REQUEST)
    assert "as it came out" in done.out and "Finished: 72.0 cm wide" in done.out


def test_something_is_to_be_weighed_or_measured(typed: Type):
    """Without, nothing can be said."""
    done = typed("midway", "-", "--rows-done", "60", stdin=REQUEST)
    assert done.status == 2 and "--left-g" in done.err


def test_rows_that_the_blanket_does_not_have_end_with_2(typed: Type):
    """With the place in the request."""
    done = typed("midway", "-", "--rows-done", "9999", "--left-g", "60", stdin=REQUEST)
    assert done.status == 2 and "/at/rows_done" in done.err
