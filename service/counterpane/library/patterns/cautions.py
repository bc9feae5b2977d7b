"""The standing cautions of every plan and pattern, in our own words; countries are named where they differ."""

from __future__ import annotations

from typing import Final

EDITION: Final = "Sources as read in November 2026; laws, standards and health advice change."
"""When the pages behind the cautions and the rules were read."""

CAUTIONS: Final[tuple[str, ...]] = (
    "This is general information, not approval. It helps a designer to notice risks; it tests and certifies nothing.",
    "A rule that says nothing found nothing in the figures entered; that does not mean that nothing is wrong. What is "
    "listed as not assessed was not looked at.",
    "Nothing here marks a blanket as suitable for any age or use, also where no rule says stop.",
    "Advice on sleep differs from country to country. Follow your own health service; where two differ, follow the "
    "stricter.",
    "United States: for babies under 12 months, paediatric advice is no loose blanket in the sleep space.",
    "United Kingdom: where a blanket is used in a cot, advice is a lightweight one, firmly tucked in, no higher than "
    "the shoulders, with the head uncovered and the feet at the foot of the cot. Australia: the same, no higher than "
    "the chest. Other countries differ; ask there.",
    "Never hang a blanket over the hood of a pram or of a car seat, never put one under a harness, never lay one over "
    "a heater.",
    "Look for hairs and threads round fingers and toes, above all in the first six months. If a finger or toe is "
    "swollen or blue, or a baby will not settle, get urgent medical help.",
    "Look the blanket over before each use and after each wash: loose ends, snags, pulled loops, moth holes, opened "
    "seams. Repair it or stop using it.",
    "For a child under three years add no ties, ribbons, fringes, pom-poms, buttons or beads.",
    "What is said of fibre and skin is general. With eczema, an allergy, a preterm birth or a medical device, ask the "
    "baby's doctor, midwife or ward.",
    "For a hospital or a charity, ask for its own list first; they differ on fibre, size, openings and washing.",
    "Whoever sells or gives to the public is the producer: look up the law on labels, technical files, tracking "
    "marks and burning where you are and where the buyer is, and take legal advice. Local health and "
    "product rules come first.",
    "Figures marked borrowed come from standards for other goods and serve as yardsticks; only a laboratory that works "
    "to the current standard can claim a result.",
    "Figures marked house are this project's own judgement, and figures marked memory were not looked up.",
    EDITION,
)
"""In the order in which they are printed."""
