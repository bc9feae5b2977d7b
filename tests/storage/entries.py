"""Entries to keep: invented data, no check of anything outside the store."""

from __future__ import annotations

import hashlib
import json
from typing import Any

from counterpane.library.ports import CountClass, Entry, Store, Wanted

ANY = CountClass(1, 0, 1)


def entry(slug: str, text: str = "first", **changes: Any) -> Entry:
    """Return an entry of this slug whose content is the text."""
    content = f'{{"slug":"{slug}","text":"{text}"}}'.encode()
    fields: dict[str, Any] = {
        "shelf": "component",
        "slug": slug,
        "kind": "body",
        "sha256": hashlib.sha256(content).hexdigest(),
        "content": content,
        "body": b'{"body":' + content + b"}",
        "card": f'{{"slug":"{slug}"}}'.encode(),
        "title": slug.replace("-", " "),
        "words": text,
        "at": "2026-01-02T03:04:05Z",
        "by": "anna",
        "status": "draft",
        "reversible": "yes",
        "classes": (ANY,),
    }
    return Entry(**fields | changes)


def slugs(store: Store, **wanted: object) -> list[str]:
    """Return the slugs of a page of components."""
    page = store.page(Wanted("component", **wanted))  # type: ignore[arg-type]
    return [json.loads(card)["slug"] for card in page.cards]
