"""What the fabric will do: curl, drawing in, stretch, take-up between parts, openings and mass. Told, never measured.

Everything is a range with what it rests on, worked out from one repeat of a texture and the counts of a plan, so that
its cost does not grow with the blanket.
"""

from counterpane.craft.behaviour.figures import Figure
from counterpane.craft.behaviour.seams import Seam, seams
from counterpane.craft.behaviour.textures import Behaviour, Curl, behaviour_of

__all__ = ["Behaviour", "Curl", "Figure", "Seam", "behaviour_of", "seams"]
