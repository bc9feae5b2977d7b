"""An edition that was published elsewhere: each of its patterns is written again and held against what it says."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Any

from counterpane.library.editions import editions
from counterpane.library.errors import Refused
from counterpane.library.ports import Entry
from counterpane.library.services import Services


def entry_of(services: Services, content: Mapping[str, Any], by: str, status: str) -> Entry:
    """Write each pattern of an edition again and return it as the store keeps it.

    Raise NotFound without its recipe, WrittenOtherwise where this program writes other words, and Refused where the
    text that it holds is not the pattern that it names.
    """
    for each in content["patterns"]:
        made = editions.written(services, content, each["terms"], each["size"] or None)
        if editions.text_of(services, made) != each["text"]:
            raise Refused(f"Its text in {each['terms'].upper()} terms is not that of its pattern.", ())
    return editions.entry_of_whole(services, content, by, status)
