"""The feed of the library over HTTP."""

from __future__ import annotations

from counterpane.api import examples
from counterpane.api.operations import Answer, Call, operation
from counterpane.library.sharing.feed import PATH, feed
from counterpane_schema.change import FeedQuery

ATOM = "application/atom+xml"
USUAL_LIMIT = 50


@operation(
    "GET",
    PATH,
    tag="changes",
    answer=None,
    media=(ATOM,),
    query=FeedQuery,
    role="reader",
    examples=examples.FEED,
)
def get_feed(call: Call) -> Answer:
    """Get what was written last, as an Atom feed (RFC 4287) for a feed reader.

    Components, recipes and editions, the latest first; a correction that was published for safety's sake has the
    category `safety`. The link `next` leads to what was written before.
    """
    return Answer(feed(call.services, call.query.get("before"), call.query.get("limit", USUAL_LIMIT)), media=ATOM)
