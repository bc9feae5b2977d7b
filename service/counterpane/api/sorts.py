"""The sorts of problem that there are: each with its address, its status, what it means and how it is put right."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass


@dataclass(frozen=True, slots=True)
class Sort:
    """A sort of problem: its name in the address of its page, its status, and how it is put right."""

    name: str
    status: int
    title: str
    meaning: str
    remedy: str

    @property
    def type(self) -> str:
        """The address of the page about it."""
        return f"/problems/{self.name}"


SORTS: Mapping[str, Sort] = {
    sort.name: sort
    for sort in (
        Sort(
            "bad-request",
            400,
            "The request cannot be read",
            "Something in the request is not HTTP as it should be.",
            "Compare the request with the example of the same operation on the API page.",
        ),
        Sort(
            "broken-json",
            400,
            "The body is not JSON",
            "The body must be one JSON text in UTF-8. Comments, trailing commas, NaN, names that stand twice in one "
            "object, brackets more than 32 deep and more than 50,000 brackets in all are refused.",
            "Correct the body at the place that `detail` names. Most JSON libraries write it correctly by themselves.",
        ),
        Sort(
            "token-needed",
            401,
            "A token is needed",
            "Writing needs a token, and so does reading from a library that others can reach. A token that is cut "
            "short, mistyped or not known here counts as none.",
            "Send `Authorization: Bearer` with a token made by `counterpane token create`.",
        ),
        Sort(
            "not-allowed",
            403,
            "The token may not do this",
            "Each token has a role: a reader reads, a contributor also submits, a reviewer also reviews, a keeper also "
            "administers.",
            "Ask the keeper of this library for a token of the role that `detail` names.",
        ),
        Sort(
            "not-theirs",
            403,
            "It belongs to somebody else",
            "A contributor changes what they added themselves, and nobody decides about what they submitted; a "
            "reviewer or a keeper may change what others added.",
            "Ask who added it, or a reviewer other than who submitted it.",
        ),
        Sort(
            "not-found",
            404,
            "There is nothing of this name",
            "The address is not one of this API, or nothing is kept under the name in it.",
            "Check the spelling; list what there is, for example with GET /v1/components?q=….",
        ),
        Sort(
            "method-not-allowed",
            405,
            "The address does not take this method",
            "The address exists and takes only the methods in the header `Allow`.",
            "Use one of the methods in the header `Allow`.",
        ),
        Sort(
            "not-acceptable",
            406,
            "The answer has no such form",
            "The header `Accept` leaves out every media type that this operation answers with.",
            "Send `Accept: */*`, or one of the media types that `detail` names.",
        ),
        Sort(
            "withdrawn",
            410,
            "It was withdrawn",
            "A revision that was withdrawn is told to nobody, its slug is never used again, and `detail` gives the "
            "reason. GET …/standing tells when and by whom.",
            "Use another one, or another revision by its hash.",
        ),
        Sort(
            "moved",
            409,
            "It does not lead there from where it stands",
            "The states of a revision, and those of a submission, follow each other as a table says; somebody else may "
            "have moved it meanwhile.",
            "Look at where it stands with GET …/standing, and make a move that `hint` names.",
        ),
        Sort(
            "taken",
            409,
            "The slug is in use",
            "Slugs are unique across all kinds of components, and among recipes; each edition of a recipe has a number "
            "of its own.",
            "Choose another slug, or revise what has it: GET it, change it, and PUT it with its tag in `If-Match`.",
        ),
        Sort(
            "key-reused",
            422,
            "The key was used for another request",
            "An `Idempotency-Key` names one request of one sender for a day. This one came before, with other bytes.",
            "Make a new key for each request, and use it again only to send the very same bytes again.",
        ),
        Sort(
            "written-otherwise",
            409,
            "The edition reads otherwise",
            "An edition stays as it was published. The same recipe would be written in other words by this program, "
            "which puts no edition's name under them.",
            "Ask for the edition as text/plain, which is kept as it was printed, or publish the next edition.",
        ),
        Sort(
            "stale",
            412,
            "It was changed since you read it",
            "The tag in `If-Match` is not that of the latest revision: somebody else wrote one since. A weak tag "
            "(`W/…`) never counts. The member `current` is the latest tag.",
            "GET the latest revision, make your change in it, and PUT that with its tag.",
        ),
        Sort(
            "too-large",
            413,
            "The body is too large",
            "A body may have 1 MiB, and a text to be checked 1,000,000 bytes.",
            "Send less: check a long text section by section.",
        ),
        Sort(
            "unsupported-media-type",
            415,
            "The body has another media type",
            "Bodies are `application/json` in UTF-8, not compressed.",
            "Send `Content-Type: application/json`, and no `Content-Encoding`.",
        ),
        Sort(
            "not-as-described",
            422,
            "The request is not as the API describes it",
            "A member or a query parameter is missing, unknown, of another type or outside its bounds. Each entry of "
            "`errors` has a pointer to it.",
            "Correct what `errors` point at. /openapi.json describes each member.",
        ),
        Sort(
            "cursor-not-valid",
            422,
            "The cursor cannot be followed",
            "A cursor is what `next` of a page holds, signed by the library that gave it. It was cut, changed, given "
            "by another library, or belongs to a list with other filters.",
            "Follow `next` of the page before as it stands, or begin again without a cursor.",
        ),
        Sort(
            "not-usable",
            422,
            "A value cannot be used",
            "Each value is of the right type, and one of them makes no sense beside the others. `errors` point at it.",
            "Correct what `errors` point at.",
        ),
        Sort(
            "cannot-be-kept",
            422,
            "The content has no canonical form",
            "What is kept is named by the SHA-256 of its canonical JSON (RFC 8785), which holds whole numbers up to "
            "9007199254740991 only.",
            "Use numbers of a size that somebody can knit.",
        ),
        Sort(
            "does-not-prove",
            422,
            "The content does not prove",
            "Whatever is kept must add up: its rows can be read, they work at some stitch count, and its worked "
            "examples come out as stated. `findings` say where it does not.",
            "Change what `findings` name, each has a hint, and send it again.",
        ),
        Sort(
            "licence-refuses",
            422,
            "A part does not allow this licence",
            "A maker may ask to be named, or that what is made of their rows is shared under the same licence. "
            "`findings` name the parts that do not allow the licence that is wanted.",
            "Take the licence in `corrections`, leave `licence` out to have the freest that all parts allow, or take "
            "other parts.",
        ),
        Sort(
            "incomplete",
            422,
            "Something must still be said",
            "A text of rows holds its counts and its sides, and not its name, its licence or its author: nothing of "
            "that kind is made up. `errors` ask for it, each at the member that is missing; `derived` is what follows.",
            "Answer what `errors` ask, each in the member that it points at, and send it again.",
        ),
        Sort(
            "cannot-be-planned",
            422,
            "No blanket can be made of this",
            "The parts do not fit together at this gauge and size. `findings` say why in numbers; `corrections` are "
            "the smallest changes of the request with which it works.",
            "Make one of the changes in `corrections`: each is a value to put at a pointer of the request.",
        ),
        Sort(
            "tag-needed",
            428,
            "The tag of what you change is needed",
            "A change must say which revision it changes, so that no update is lost.",
            "GET it first and send its `ETag` in the header `If-Match`.",
        ),
        Sort(
            "too-many-requests",
            429,
            "Too many requests in a minute",
            "Each caller may send so many requests a minute, as the header `RateLimit-Policy` says. Whoever sends a "
            "token that holds is one caller, wherever they ask from; all others are told apart by their addresses, so "
            "that those behind one address share its quota, and the addresses of one IPv6 network (/64) are one.",
            "Send the same request again after the seconds in the header `Retry-After`; nothing was done of it. In "
            "each answer `RateLimit` says how many are left (`r`), and in how many seconds they begin again (`t`).",
        ),
        Sort(
            "internal",
            500,
            "This program has failed",
            "It is a fault of this program and not of your request; nothing was written.",
            "Report it with the request id. Sending the same again will most likely fail again.",
        ),
        Sort(
            "busy",
            503,
            "The library is busy",
            "Another program has been writing to the library for more than five seconds.",
            "Send the same request again after the seconds in the header `Retry-After`.",
        ),
    )
}
