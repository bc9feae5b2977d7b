"""Strong entity tags: the hash of a revision in quotes (RFC 9110)."""

from __future__ import annotations

import re

ANY = "*"
_TAG = re.compile(r'(W/)?"([^"]*)"')


def tag(sha256: str) -> str:
    """Return the tag of a revision."""
    return f'"{sha256}"'


def answers_none_match(header: str, sha256: str) -> bool:
    """Say whether If-None-Match names this revision; a weak tag counts, since only a copy is asked about."""
    return header.strip() == ANY or any(value == sha256 for _, value in _TAG.findall(header))


def matched(header: str, sha256: str) -> bool:
    """Say whether If-Match names this revision; a weak tag never does."""
    return header.strip() == ANY or any(not weak and value == sha256 for weak, value in _TAG.findall(header))
