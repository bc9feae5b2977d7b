"""The only reader of seeds/: TOML files become stitches, sources and components, each fault with its place."""

from counterpane.seeding.components import load_component, load_components, shipped
from counterpane.seeding.faults import SeedFault
from counterpane.seeding.roots import seeds_root
from counterpane.seeding.sources import Source, load_sources
from counterpane.seeding.vocabulary import load_vocabulary

__all__ = [
    "SeedFault",
    "Source",
    "load_component",
    "load_components",
    "load_sources",
    "load_vocabulary",
    "seeds_root",
    "shipped",
]
