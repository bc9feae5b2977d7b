"""What a call may raise, as a tree.

    ClientError
    ├── Unreachable            no connection, or no answer in time
    ├── Unreadable             an answer that is cut, no JSON, or not what its hash says
    └── ProblemError           the library refused; one class for each sort of problem
        ├── BadRequest · BrokenJson · TooLarge · UnsupportedMediaType · NotAcceptable · MethodNotAllowed
        ├── TokenNeeded · NotAllowed · NotTheirs
        ├── NotFound · Withdrawn · Moved · Taken · Stale · KeyReused · WrittenOtherwise · TagNeeded · CursorNotValid
        ├── NotAsDescribed · NotUsable · CannotBeKept · DoesNotProve · LicenceRefuses · Incomplete · CannotBePlanned
        └── Busy · TooManyRequests · Internal

`retryable` says whether the same call may succeed later; `hint` is the next step.
"""

from __future__ import annotations

from collections.abc import Mapping
from typing import Any, ClassVar


class ClientError(Exception):
    """A call has no answer that can be used."""

    retryable: ClassVar[bool] = False
    hint: str = ""
    request_id: str | None = None


class Unreachable(ClientError):
    """No connection could be made, or no answer came in time."""

    retryable = True
    hint = "Check that the library is being served at this address, and try again."


class Unreadable(ClientError):
    """The answer is cut, is no JSON, or is not what its hash says."""

    retryable = True
    hint = "Try again; if it happens again, something between here and the library changes its answers."


class ProblemError(ClientError):
    """The library refused: the members of its problem document; `document` has them all."""

    def __init__(self, document: Mapping[str, Any], status: int, request_id: str | None = None) -> None:
        super().__init__(str(document.get("detail") or document.get("title") or f"status {status}"))
        self.document = document
        self.status = status
        self.type = str(document.get("type", "about:blank"))
        self.title = str(document.get("title", ""))
        self.hint = str(document.get("hint", ""))
        self.request_id = document.get("request_id") or request_id
        self.errors = tuple(document.get("errors", ()))
        self.findings = tuple(document.get("findings", ()))
        self.corrections = tuple(document.get("corrections", ()))


class BadRequest(ProblemError):
    """The request cannot be read."""


class BrokenJson(ProblemError):
    """The body is not JSON."""


class TooLarge(ProblemError):
    """The body is too large."""


class UnsupportedMediaType(ProblemError):
    """The body has a media type that is not taken."""


class NotAcceptable(ProblemError):
    """The answer has no form that was asked for."""


class MethodNotAllowed(ProblemError):
    """The address does not take this method."""


class TokenNeeded(ProblemError):
    """A token is needed, or the one sent is not known."""


class NotAllowed(ProblemError):
    """The role of the token does not reach."""


class NotFound(ProblemError):
    """Nothing is kept under this name."""


class NotTheirs(ProblemError):
    """It belongs to somebody else, or is one's own where another must decide."""


class Withdrawn(ProblemError):
    """It was withdrawn; the message says why."""


class Moved(ProblemError):
    """It does not lead there from where it stands."""


class Taken(ProblemError):
    """The slug is in use."""


class KeyReused(ProblemError):
    """The key of a request was used before, with another body."""


class WrittenOtherwise(ProblemError):
    """The edition would read otherwise by the program of today; as plain text it is kept as it was printed."""


class Stale(ProblemError):
    """Somebody else revised it since it was read; after a retried call it may be one's own first try."""

    @property
    def current(self) -> str | None:
        """The tag of the latest revision."""
        return self.document.get("current")


class TagNeeded(ProblemError):
    """The tag of what is changed is missing."""


class CursorNotValid(ProblemError):
    """The cursor of a page cannot be followed."""


class NotAsDescribed(ProblemError):
    """The request is not as the API describes it; `errors` point at the places."""


class NotUsable(ProblemError):
    """A value makes no sense beside the others; `errors` point at it."""


class CannotBeKept(ProblemError):
    """The content has no canonical form."""


class DoesNotProve(ProblemError):
    """The content does not add up; `findings` say where."""


class LicenceRefuses(ProblemError):
    """A part does not allow the licence under which the pattern is to be shared; `findings` name it."""


class Incomplete(ProblemError):
    """Something must still be said; `errors` ask for it, each with its pointer."""

    @property
    def derived(self) -> Mapping[str, Any]:
        """What follows from the rows that were sent."""
        return dict(self.document.get("derived", {}))


class CannotBePlanned(ProblemError):
    """No blanket can be made of this; `corrections` are the smallest changes that help."""


class Busy(ProblemError):
    """The library is busy for the moment."""

    retryable = True


class TooManyRequests(ProblemError):
    """Too many requests were sent in this minute; nothing was done of this one."""

    retryable = True


class Internal(ProblemError):
    """The library has failed; `request_id` is what to report."""


CLASSES: Mapping[str, type[ProblemError]] = {
    "bad-request": BadRequest,
    "broken-json": BrokenJson,
    "busy": Busy,
    "cannot-be-kept": CannotBeKept,
    "cannot-be-planned": CannotBePlanned,
    "cursor-not-valid": CursorNotValid,
    "does-not-prove": DoesNotProve,
    "licence-refuses": LicenceRefuses,
    "incomplete": Incomplete,
    "internal": Internal,
    "key-reused": KeyReused,
    "method-not-allowed": MethodNotAllowed,
    "moved": Moved,
    "not-acceptable": NotAcceptable,
    "not-allowed": NotAllowed,
    "not-as-described": NotAsDescribed,
    "not-found": NotFound,
    "not-theirs": NotTheirs,
    "not-usable": NotUsable,
    "stale": Stale,
    "tag-needed": TagNeeded,
    "taken": Taken,
    "token-needed": TokenNeeded,
    "too-large": TooLarge,
    "too-many-requests": TooManyRequests,
    "unsupported-media-type": UnsupportedMediaType,
    "withdrawn": Withdrawn,
    "written-otherwise": WrittenOtherwise,
}


def problem_of(document: Mapping[str, Any], status: int, request_id: str | None) -> ProblemError:
    """Return the exception for a problem document; a sort that is not known is a ProblemError."""
    name = str(document.get("type", "")).rpartition("/")[2]
    return CLASSES.get(name, ProblemError)(document, status, request_id)
