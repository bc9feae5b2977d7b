"""What the use cases refuse, as a tree of exceptions.

    LibraryError
    ├── NotFound      no such component, recipe, revision, object, rule, fact
    │   ├── UnknownPart   a part or a gauge names a component that is not kept: `plan_requests`
    │   └── Gone          it was withdrawn, for a reason
    ├── BadInput      a value that makes no sense where it stands: `values`
    ├── Taken         the slug is in use
    ├── WrittenOtherwise   this program writes a published pattern in other words
    ├── Stale         the revision that the caller changed is not the latest one
    ├── Moved         a state cannot be reached from the one in which something stands
    ├── KeyReused     the key of a request was used for another one
    ├── Refused       the content does not prove; carries findings
    │   └── LicenceRefused   a part does not allow the licence that is wanted
    ├── Incomplete    something must still be said; carries the questions
    ├── Unkeepable    the content has no canonical form
    ├── Unknown       no token, or one that is not known
    ├── NotAllowed    the token's role does not reach
    ├── NotTheirs     this role may do it, and not to this
    ├── BrokenDump    a dump is cut or changed; says at which line
    ├── NotTaken      a peer's object is not what it should be, or does not prove here
    ├── PeerRefused   a peer may not be asked, or answers what it should not
    │   └── PeerUnreachable   no answer, or one that broke off
    ├── Busy          the store is taken by another writer for too long
    └── Unreadable    the file is not a store

Each says in `hint` what to do next. The edges translate them in one table; nothing here knows of HTTP.
"""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from typing import Any

from counterpane.craft.findings import Finding


class LibraryError(Exception):
    """A use case refuses; `hint` is the next step."""

    hint = "Read the message and change the request."

    def __init__(self, message: str, hint: str | None = None) -> None:
        super().__init__(message)
        self.hint = hint or self.hint


class NotFound(LibraryError):
    """Nothing of that name is kept."""

    hint = "Check the spelling, or list what there is."


class Gone(NotFound):
    """A revision was withdrawn: its slug is never used again, and only the reason is told."""

    hint = "Use another one, or an earlier revision by its hash; the reason says why this one is gone."


class Moved(LibraryError):
    """A state cannot be reached from the one in which a revision or a submission stands."""

    hint = "Look at where it stands, and at the table of moves."


class Taken(LibraryError):
    """The slug is in use."""

    hint = (
        "Choose another slug, or revise what has it with PUT and If-Match. After an answer that was lost, GET it "
        "first: it may be what you sent."
    )


class WrittenOtherwise(LibraryError):
    """A published pattern would be written by this program in other words than it was published in."""


class Stale(LibraryError):
    """Another revision was written since the caller read; `current` is its hash."""

    hint = "Fetch the latest revision, make the change in it, and send that with its tag."

    def __init__(self, message: str, current: str) -> None:
        super().__init__(message)
        self.current = current


class KeyReused(LibraryError):
    """The key of a request was used before, for a request that said something else."""

    hint = "Take a new key for a new request, and the same key only to send the very same bytes again."


class Refused(LibraryError):
    """The content does not prove; `findings` say where and why."""

    hint = "Change what the findings name, and send it again."

    def __init__(self, message: str, findings: tuple[Finding, ...], hint: str | None = None) -> None:
        super().__init__(message, hint)
        self.findings = findings


class LicenceRefused(Refused):
    """A part does not allow the licence under which the pattern is to be shared."""


class Incomplete(LibraryError):
    """Something does not follow from what was sent; `questions` are pairs of a pointer and what to say there.

    `derived` is what does follow.
    """

    hint = "Answer each question in the member that it points at, and send it again."

    def __init__(self, questions: Sequence[tuple[str, str]], derived: Mapping[str, Any]) -> None:
        super().__init__(f"{questions[0][0]}: {questions[0][1]}")
        self.questions = tuple(questions)
        self.derived = derived


class Unkeepable(LibraryError):
    """The content has no canonical form, so no hash can name it."""

    hint = "Send whole numbers of at most 9007199254740991 and texts of Unicode scalar values."


class Unknown(LibraryError):
    """The caller shows no token, or one that is not known here."""

    hint = "Send `Authorization: Bearer` with a token made by `counterpane token create`."


class NotAllowed(LibraryError):
    """The token is known and its role does not reach; `needs` is the least role that does."""

    def __init__(self, message: str, needs: str) -> None:
        super().__init__(message, f"Ask the keeper of this library for a token of the role {needs}.")
        self.needs = needs


class NotTheirs(LibraryError):
    """The role may do this, and this holder not to this thing."""

    hint = "Ask who added it, or a reviewer."


class BrokenDump(LibraryError):
    """A dump is cut, changed or of another form; `line` counts from 1."""

    hint = "Take another copy of the dump; nothing was written."

    def __init__(self, line: int, message: str) -> None:
        super().__init__(f"line {line}: {message}")
        self.line = line


class NotTaken(LibraryError):
    """A revision of a peer is not that of its hash, or does not prove here; `sha256` is its name at the peer."""

    hint = (
        "What came before it is kept, and a later pull begins with it again. Ask the peer's keeper; to go on without "
        "it, name it with --past."
    )

    def __init__(self, sha256: str, message: str) -> None:
        super().__init__(message)
        self.sha256 = sha256


class PeerRefused(LibraryError):
    """A peer may not be asked, or it answers what no library of this kind does."""

    hint = "Look at its address, and at the setting `peers`."


class PeerUnreachable(PeerRefused):
    """A peer gave no answer, or one that broke off."""


class Busy(LibraryError):
    """Another writer holds the store for longer than a writer waits."""

    hint = "Send the same request again in a second."


class Unreadable(LibraryError):
    """The file is there and is not a store of this program."""

    hint = "Name another file, or one that is not there yet: it is made."
