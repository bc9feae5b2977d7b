"""Safety rules, in the order of their references; what none of them covers is listed as not built."""

from __future__ import annotations

from counterpane.craft.findings import Rule
from counterpane.craft.rules.safety.adult_dozing_beside_the_baby import adult_dozing_beside_the_baby
from counterpane.craft.rules.safety.baby_left_cold import baby_left_cold
from counterpane.craft.rules.safety.baby_out_of_sight import baby_out_of_sight
from counterpane.craft.rules.safety.blanket_over_the_pram import blanket_over_the_pram
from counterpane.craft.rules.safety.blanket_under_the_harness import blanket_under_the_harness
from counterpane.craft.rules.safety.float_catches_fingers import float_catches_fingers
from counterpane.craft.rules.safety.fringe_or_tassel import fringe_or_tassel
from counterpane.craft.rules.safety.large_opening_for_a_toddler import large_opening_for_a_toddler
from counterpane.craft.rules.safety.loose_blanket_in_sleep_space import loose_blanket_in_sleep_space
from counterpane.craft.rules.safety.loose_end_left_long import loose_end_left_long
from counterpane.craft.rules.safety.opening_not_measured import opening_not_measured
from counterpane.craft.rules.safety.opening_takes_a_fingertip import opening_takes_a_fingertip
from counterpane.craft.rules.safety.opening_traps_fingers_and_toes import opening_traps_fingers_and_toes
from counterpane.craft.rules.safety.openwork_for_a_preterm_baby import openwork_for_a_preterm_baby
from counterpane.craft.rules.safety.pin_left_in import pin_left_in
from counterpane.craft.rules.safety.pom_pom import pom_pom
from counterpane.craft.safety import SafetyInputs

RULES: tuple[Rule[SafetyInputs], ...] = (
    loose_blanket_in_sleep_space,
    baby_out_of_sight,
    opening_takes_a_fingertip,
    opening_traps_fingers_and_toes,
    large_opening_for_a_toddler,
    openwork_for_a_preterm_baby,
    float_catches_fingers,
    loose_end_left_long,
    fringe_or_tassel,
    pom_pom,
    blanket_over_the_pram,
    blanket_under_the_harness,
    adult_dozing_beside_the_baby,
    pin_left_in,
    opening_not_measured,
    baby_left_cold,
)

LISTED: tuple[str, ...] = tuple(f"R{number:02}" for number in range(1, 49) if number != 8)
"""Every rule that the project knows of; R08 is a number that is not used."""

NOT_BUILT: tuple[str, ...] = tuple(sorted(set(LISTED) - {rule.reference for rule in RULES if rule.reference}))
"""Listed rules that no file here works out: never assessed, whatever the inputs."""
