"""Safety rules, one file each, in the order of their references."""

from __future__ import annotations

from counterpane.craft.findings import Rule
from counterpane.craft.rules.safety.adult_dozing_beside_the_baby import adult_dozing_beside_the_baby
from counterpane.craft.rules.safety.baby_left_cold import baby_left_cold
from counterpane.craft.rules.safety.baby_out_of_sight import baby_out_of_sight
from counterpane.craft.rules.safety.blanket_not_lightweight import blanket_not_lightweight
from counterpane.craft.rules.safety.blanket_over_the_pram import blanket_over_the_pram
from counterpane.craft.rules.safety.blanket_under_the_harness import blanket_under_the_harness
from counterpane.craft.rules.safety.chemistry_not_shown import chemistry_not_shown
from counterpane.craft.rules.safety.cord_near_a_baby import cord_near_a_baby
from counterpane.craft.rules.safety.cord_too_long import cord_too_long
from counterpane.craft.rules.safety.cord_too_thin import cord_too_thin
from counterpane.craft.rules.safety.cords_tangle import cords_tangle
from counterpane.craft.rules.safety.fibre_label_wrong import fibre_label_wrong
from counterpane.craft.rules.safety.fibre_melts import fibre_melts
from counterpane.craft.rules.safety.flame_retardant_finish import flame_retardant_finish
from counterpane.craft.rules.safety.float_catches_fingers import float_catches_fingers
from counterpane.craft.rules.safety.fringe_or_tassel import fringe_or_tassel
from counterpane.craft.rules.safety.hard_part_comes_off import hard_part_comes_off
from counterpane.craft.rules.safety.hard_part_near_a_baby import hard_part_near_a_baby
from counterpane.craft.rules.safety.label_field_missing import label_field_missing
from counterpane.craft.rules.safety.large_opening_for_a_toddler import large_opening_for_a_toddler
from counterpane.craft.rules.safety.layers_double_the_warmth import layers_double_the_warmth
from counterpane.craft.rules.safety.light_fabric_burns import light_fabric_burns
from counterpane.craft.rules.safety.loop_passes_over_a_head import loop_passes_over_a_head
from counterpane.craft.rules.safety.loose_blanket_in_sleep_space import loose_blanket_in_sleep_space
from counterpane.craft.rules.safety.loose_end_left_long import loose_end_left_long
from counterpane.craft.rules.safety.mothballs_near_a_baby import mothballs_near_a_baby
from counterpane.craft.rules.safety.not_a_blanket import not_a_blanket
from counterpane.craft.rules.safety.opening_not_measured import opening_not_measured
from counterpane.craft.rules.safety.opening_takes_a_fingertip import opening_takes_a_fingertip
from counterpane.craft.rules.safety.opening_traps_fingers_and_toes import opening_traps_fingers_and_toes
from counterpane.craft.rules.safety.openwork_for_a_preterm_baby import openwork_for_a_preterm_baby
from counterpane.craft.rules.safety.pin_left_in import pin_left_in
from counterpane.craft.rules.safety.pom_pom import pom_pom
from counterpane.craft.rules.safety.pulled_loop_tightens import pulled_loop_tightens
from counterpane.craft.rules.safety.quilted_cover_for_a_baby import quilted_cover_for_a_baby
from counterpane.craft.rules.safety.raised_surface_flashes import raised_surface_flashes
from counterpane.craft.rules.safety.spare_length_over_the_baby import spare_length_over_the_baby
from counterpane.craft.rules.safety.thread_inside_an_enclosed_part import thread_inside_an_enclosed_part
from counterpane.craft.rules.safety.thread_that_cuts import thread_that_cuts
from counterpane.craft.rules.safety.too_narrow_to_tuck import too_narrow_to_tuck
from counterpane.craft.rules.safety.ward_not_asked import ward_not_asked
from counterpane.craft.rules.safety.wash_too_mild import wash_too_mild
from counterpane.craft.rules.safety.weight_added_for_a_baby import weight_added_for_a_baby
from counterpane.craft.rules.safety.weight_added_for_a_child import weight_added_for_a_child
from counterpane.craft.rules.safety.wool_felts_in_the_wash import wool_felts_in_the_wash
from counterpane.craft.rules.safety.wool_prickles import wool_prickles
from counterpane.craft.rules.safety.yarn_sheds_fibre import yarn_sheds_fibre
from counterpane.craft.safety import SafetyInputs

RULES: tuple[Rule[SafetyInputs], ...] = (
    loose_blanket_in_sleep_space,
    baby_out_of_sight,
    weight_added_for_a_baby,
    weight_added_for_a_child,
    quilted_cover_for_a_baby,
    layers_double_the_warmth,
    blanket_not_lightweight,
    too_narrow_to_tuck,
    spare_length_over_the_baby,
    opening_takes_a_fingertip,
    opening_traps_fingers_and_toes,
    large_opening_for_a_toddler,
    openwork_for_a_preterm_baby,
    float_catches_fingers,
    thread_inside_an_enclosed_part,
    loose_end_left_long,
    pulled_loop_tightens,
    loop_passes_over_a_head,
    cord_too_long,
    cord_near_a_baby,
    cord_too_thin,
    cords_tangle,
    fringe_or_tassel,
    pom_pom,
    hard_part_comes_off,
    hard_part_near_a_baby,
    thread_that_cuts,
    yarn_sheds_fibre,
    raised_surface_flashes,
    light_fabric_burns,
    fibre_melts,
    wool_prickles,
    wash_too_mild,
    wool_felts_in_the_wash,
    chemistry_not_shown,
    flame_retardant_finish,
    fibre_label_wrong,
    label_field_missing,
    not_a_blanket,
    blanket_over_the_pram,
    blanket_under_the_harness,
    adult_dozing_beside_the_baby,
    pin_left_in,
    opening_not_measured,
    baby_left_cold,
    mothballs_near_a_baby,
    ward_not_asked,
)

HIGHEST = 48
"""The last number on the list of safety rules, which the house keeps."""

UNUSED = 8
"""The number of that list that no rule has: a share of a baby's mass would read as a permission; house."""

LISTED: tuple[str, ...] = tuple(f"R{number:02}" for number in range(1, HIGHEST + 1) if number != UNUSED)
"""Every rule that the project knows of; R08 is a number that is not used."""
