"""Lists of wards and charities that are kept: dated, with whose they are and where they were read.

A list says what a place asks of a piece. What is known of a child is part of a request and is never kept here.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from typing import Any

import orjson

from counterpane.library.keeping.keeping import Keeping
from counterpane.library.keeping.objects import canonical, digest, json_bytes
from counterpane.library.ports import Entry, Wanted
from counterpane.library.safety.profile_finding import SHELF
from counterpane.library.safety.profiles import THEIRS, content_of, profile_of
from counterpane.library.services import Services

TOLD = ("slug", "name", "dated", "source")


def entry_of(services: Services, content: Mapping[str, Any], by: str, status: str) -> Entry:
    """Read a list strictly and return it as the store keeps it; raise BadInput and Unkeepable."""
    profile = profile_of({name: value for name, value in content.items() if name != "slug"})
    whole = {"slug": content["slug"], **content_of(profile)}
    data = canonical(whole)
    sha256, at = digest(data), services.now()
    told = {"status": status, "sha256": sha256, "href": f"/v1/profiles/{whole['slug']}"}
    return Entry(
        shelf=SHELF,
        slug=whole["slug"],
        kind=SHELF,
        sha256=sha256,
        content=data,
        body=json_bytes(whole | told | {"about": THEIRS, "changed": at, "etag": f'"{sha256}"'}),
        card=json_bytes({name: whole[name] for name in TOLD} | told),
        title=f"{whole['slug'].replace('-', ' ')} {profile.name}",
        words="\n".join((profile.source, *(item.says for item in profile.items))),
        at=at,
        by=by,
        status=status,
    )


PROFILES = Keeping(SHELF, entry_of)


def cards(services: Services) -> Iterator[dict[str, Any]]:
    """Give the line of each list, by slug."""
    after, more = None, True
    while more:
        found = services.store.page(Wanted(SHELF, after=after))
        yield from (orjson.loads(card) for card in found.cards)
        after, more = found.last, found.last is not None
