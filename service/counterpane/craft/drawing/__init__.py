"""Pictures of a plan as SVG: pure functions from what was worked out to a text.

Shapes, hatchings and words tell things apart, never a colour alone. Every picture has a title and says in words what it
shows. What a part looks like on a page is `press`; nothing is drawn here that the plan does not hold.
"""
