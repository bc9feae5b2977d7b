"""What is told of a component that an earlier version kept: what it did not derive is derived when it is read.

What follows from the rows lies outside the hash. The content, its bytes and its name stay as they are kept.
"""

from __future__ import annotations

from dataclasses import replace

import orjson

from counterpane.craft.component import component_of
from counterpane.library.keeping.objects import json_bytes
from counterpane.library.parts.telling import derived_json
from counterpane.library.parts.textures import keys_of, same_texture
from counterpane.library.ports import Kept
from counterpane.library.services import Services

BEHAVIOUR, TEXTURE, NO_ROWS = b'"behaviour":', b'"texture":', b'"versions":[]'
"""Members as they stand in the bytes of an answer; a text has its quotes escaped and never holds them so."""


def retold(services: Services, kept: Kept) -> Kept:
    """Return a revision of a component with all that follows from its rows; one that has all of it as it is kept."""
    if BEHAVIOUR in kept.body and (TEXTURE in kept.body or NO_ROWS in kept.body):
        return kept
    whole = orjson.loads(kept.body)
    component = component_of(orjson.loads(services.store.object(kept.sha256)))
    same = same_texture(services, kept.slug, keys_of(component, services.vocabulary))
    told = {"derived": derived_json(component, services.vocabulary), "same_texture": same}
    return replace(kept, body=json_bytes(whole | told))
