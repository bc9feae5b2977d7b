"""Tokens: their shape, what is kept of them, and what a role may do."""

from __future__ import annotations

import itertools

import pytest

from counterpane.library.errors import NotAllowed, Unknown
from counterpane.library.ports import ROLES, Holder, Role
from counterpane.library.review import tokens
from counterpane.storage.memory import MemoryStore

AT = "2026-01-02T03:04:05Z"


def test_a_token_is_made_of_a_prefix_thirty_letters_and_their_check() -> None:
    """And no two are alike."""
    store = MemoryStore()
    made = [tokens.create(store, "keeper", "anna", AT) for _ in range(50)]
    assert all(token.startswith("cpn_") and len(token) == 40 and tokens.well_formed(token) for token in made)
    assert len(set(made)) == 50


def test_a_slip_of_the_pen_is_seen_in_every_place() -> None:
    """One changed letter, wherever it stands, breaks the check."""
    token = tokens.create(MemoryStore(), "reader", "anna", AT)
    for place in range(4, 40):
        other = "x" if token[place] != "x" else "y"
        assert not tokens.well_formed(token[:place] + other + token[place + 1 :])


@pytest.mark.parametrize("token", ["", "cpn_", "é" * 40, "cpn_" + "é" * 36, "x" * 10_000])
def test_what_is_no_token_is_refused(token: str) -> None:
    """Without asking the store."""
    with pytest.raises(Unknown):
        tokens.holder_of(MemoryStore(), token)


def test_a_token_leads_to_its_holder_and_another_does_not() -> None:
    """A well-formed token that was made elsewhere is not known."""
    store = MemoryStore()
    token = tokens.create(store, "reviewer", "anna", AT)
    assert (tokens.holder_of(store, token).role, tokens.holder_of(store, token).name) == ("reviewer", "anna")
    with pytest.raises(Unknown):
        tokens.holder_of(MemoryStore(), token)


@pytest.mark.parametrize(("has", "needs"), list(itertools.product(ROLES, ROLES)))
def test_a_role_reaches_those_before_it(has: Role, needs: Role) -> None:
    """Reader, contributor, reviewer, keeper."""
    holder = Holder("0" * 64, has, "anna", AT)
    if ROLES.index(has) >= ROLES.index(needs):
        tokens.require(holder, needs)
    else:
        with pytest.raises(NotAllowed, match=has):
            tokens.require(holder, needs)
