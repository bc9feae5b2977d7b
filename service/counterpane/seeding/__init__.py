"""The only reader of seeds/: TOML files become stitches and components, strictly, each fault with its place."""

from counterpane.seeding.faults import SeedFault
from counterpane.seeding.roots import seeds_root
from counterpane.seeding.vocabulary import load_vocabulary

__all__ = ["SeedFault", "load_vocabulary", "seeds_root"]
