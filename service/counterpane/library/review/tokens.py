"""Tokens: how they are made, how a mistyped one is told from an unknown one, and what a role may do.

A token is `cpn_`, 30 random characters of 0-9A-Za-z (178 bits) and 6 more that are their CRC-32, so that a slip of the
pen is seen without asking the store. Only the SHA-256 of the whole is kept: with so many random bits no salt is needed.
"""

from __future__ import annotations

import secrets
import string
import zlib

from counterpane.library.errors import NotAllowed, NotFound, Unknown
from counterpane.library.keeping.objects import digest
from counterpane.library.ports import ROLES, Holder, Role, Store

PREFIX = "cpn_"
RANDOM_LENGTH = 30
CHECK_LENGTH = 6
ALPHABET = string.digits + string.ascii_uppercase + string.ascii_lowercase


def create(store: Store, role: Role, name: str, at: str, until: str | None = None) -> str:
    """Make a token, keep its hash, and return the token, which can never be shown again.

    `until` is the last day on which it opens anything.
    """
    secret = "".join(secrets.choice(ALPHABET) for _ in range(RANDOM_LENGTH))
    token = PREFIX + secret + check_of(secret)
    store.put_token(Holder(digest(token.encode()), role, name, at, until))
    return token


def check_of(secret: str) -> str:
    """Return the CRC-32 of the secret in base 62, six characters."""
    rest, letters = zlib.crc32(secret.encode()), ""
    for _ in range(CHECK_LENGTH):
        rest, digit = divmod(rest, len(ALPHABET))
        letters = ALPHABET[digit] + letters
    return letters


def well_formed(token: str) -> bool:
    """Say whether the text has the shape of a token and its check is right."""
    secret, check = token[len(PREFIX) : -CHECK_LENGTH], token[-CHECK_LENGTH:]
    shaped = token.startswith(PREFIX) and token.isascii() and len(secret) == RANDOM_LENGTH
    return shaped and secrets.compare_digest(check_of(secret), check)


def holder_of(store: Store, token: str | None, today: str = "") -> Holder:
    """Return whom the token stands for; raise Unknown where there is none, or it is not kept here, or is over."""
    if not token:
        raise Unknown("This needs a token.")
    if not well_formed(token):
        raise Unknown("That is not a token of this library: it is cut short or mistyped.")
    try:
        holder = store.token(digest(token.encode()))
    except NotFound:
        raise Unknown("This library does not know that token.") from None
    if holder.until and today > holder.until:
        raise Unknown(f"That token was good up to {holder.until}.", "Ask the keeper of this library for another one.")
    return holder


def named(store: Store, start: str) -> Holder:
    """Return the token whose hash begins so; raise NotFound where none does, or several do."""
    found = [holder for holder in store.tokens() if start and holder.sha256.startswith(start)]
    if len(found) != 1:
        message = f"{len(found) or 'No'} token{'s have' if len(found) > 1 else ' has'} a hash that begins {start!r}."
        raise NotFound(message, "`counterpane token list` shows the beginnings.")
    return found[0]


def require(holder: Holder, role: Role) -> None:
    """Raise NotAllowed unless the holder's role reaches this one; each role includes those before it."""
    if ROLES.index(holder.role) < ROLES.index(role):
        raise NotAllowed(f"A token of the role {holder.role} may not do this.", role)
