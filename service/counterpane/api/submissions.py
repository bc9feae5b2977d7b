"""Submissions, safety reports and decisions over HTTP."""

from __future__ import annotations

from counterpane.api import kept
from counterpane.api import review_examples as examples
from counterpane.api.operations import Answer, Call, operation
from counterpane.api.paging import page, read_query, write_cursor
from counterpane.api.sending import as_json
from counterpane.library.keeping.objects import json_bytes
from counterpane.library.review import submissions
from counterpane_schema.submission import (
    DecisionContent,
    ReportContent,
    SubmissionAnswer,
    SubmissionContent,
    SubmissionPage,
    SubmissionQuery,
)

ALL = "/v1/submissions"
ONE = f"{ALL}/<number>"
TAG = "reviewing"


@operation(
    "POST",
    ALL,
    tag=TAG,
    answer=SubmissionAnswer,
    status=201,
    body=SubmissionContent,
    role="contributor",
    problems=("not-found", "withdrawn", "moved", "not-theirs", "taken", "not-usable", "cannot-be-planned"),
    once=True,
    examples=examples.SUBMITTED,
)
def submit(call: Call) -> Answer:
    """Hand in the latest revision of what one added, to be reviewed.

    It is looked at by the program at once, and `checks` keep what was found: the mathematics, the wording, what is told
    of safety and what is not, the licence, and what it is like, however it is shifted, turned or mirrored. None of that
    refuses it. Sent again after a change was asked for, it goes on as the same submission.
    """
    return _made(*submissions.submit_once(call.services, call.body, call.writer, call.once))


@operation(
    "POST",
    "/v1/safety-reports",
    tag=TAG,
    answer=SubmissionAnswer,
    status=201,
    body=ReportContent,
    role="reader",
    problems=("not-found", "withdrawn", "not-usable"),
    once=True,
    examples=examples.REPORTED,
    signed=True,
)
def report_safety(call: Call) -> Answer:
    """Report that a component or a recipe may hurt a baby; any token will do.

    Reports stand before all submissions in the queue.
    """
    return _made(*submissions.report_once(call.services, call.body, call.writer, call.once))


@operation("GET", ALL, tag=TAG, answer=SubmissionPage, query=SubmissionQuery, role="reader", examples=examples.QUEUE)
def list_submissions(call: Call) -> Answer:
    """List what waits for somebody: reports first, then what waits for us, the oldest first."""
    filters, after, limit = read_query(call.services, call.query)
    found = submissions.page(call.services, filters, after, limit)
    cursor = write_cursor(call.services, filters | {"limit": limit}, found.last) if found.last is not None else None
    return page(ALL, [json_bytes(each) for each in found.items], cursor)


@operation("GET", ONE, tag=TAG, answer=SubmissionAnswer, role="reader", examples=examples.SUBMISSION)
def get_submission(call: Call) -> Answer:
    """Get a submission or a report whole, with what the program found and all decisions."""
    return as_json(submissions.told_of(call.services, _number(call)))


@operation(
    "POST",
    f"{ONE}/decisions",
    tag=TAG,
    answer=SubmissionAnswer,
    body=DecisionContent,
    role="reviewer",
    problems=("moved", "not-theirs", "not-usable"),
    once=True,
    examples=examples.DECIDED,
)
def decide(call: Call) -> Answer:
    """Decide about a submission or a report, with a code and a sentence for people.

    An accepted revision is accepted from then on; one that is refused, or asked about, is a draft again. A report that
    is upheld moves nothing by itself: hold the revision back or publish an edition, of which libraries that pull from
    this one hear too. Nobody decides about what they added or submitted.
    """
    told, before = submissions.decide_once(call.services, _number(call), call.body, call.writer, call.once)
    return Answer(json_bytes(told), headers=kept.again(before))


def _made(told: dict[str, object], before: bool) -> Answer:
    return Answer(json_bytes(told), 201, headers=(("Location", str(told["href"])), *kept.again(before)))


def _number(call: Call) -> int:
    return call.number("a submission", f"GET {ALL} lists them.")
