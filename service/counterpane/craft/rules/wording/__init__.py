"""Rules about wording: what a technical editor asks before a pattern is printed."""

from counterpane.craft.checking import Examined
from counterpane.craft.findings import Rule
from counterpane.craft.rules.wording.abbreviation_explained_otherwise import abbreviation_explained_otherwise
from counterpane.craft.rules.wording.abbreviation_explained_twice import abbreviation_explained_twice
from counterpane.craft.rules.wording.abbreviation_not_explained import abbreviation_not_explained
from counterpane.craft.rules.wording.abbreviation_not_used import abbreviation_not_used
from counterpane.craft.rules.wording.attachment_near_a_baby import attachment_near_a_baby
from counterpane.craft.rules.wording.bind_off_missing import bind_off_missing
from counterpane.craft.rules.wording.colour_change_shows_bumps import colour_change_shows_bumps
from counterpane.craft.rules.wording.colour_not_explained import colour_not_explained
from counterpane.craft.rules.wording.count_not_printed import count_not_printed
from counterpane.craft.rules.wording.end_side_wrong import end_side_wrong
from counterpane.craft.rules.wording.front_matter_missing import front_matter_missing
from counterpane.craft.rules.wording.gauge_over_little import gauge_over_little
from counterpane.craft.rules.wording.gauge_without_rows import gauge_without_rows
from counterpane.craft.rules.wording.gauge_without_texture import gauge_without_texture
from counterpane.craft.rules.wording.length_without_unit import length_without_unit
from counterpane.craft.rules.wording.marker_left_over import marker_left_over
from counterpane.craft.rules.wording.measures_disagree import measures_disagree
from counterpane.craft.rules.wording.needle_size_unclear import needle_size_unclear
from counterpane.craft.rules.wording.repeat_across_parts import repeat_across_parts
from counterpane.craft.rules.wording.repeat_extent_unclear import repeat_extent_unclear
from counterpane.craft.rules.wording.repeat_times_two_ways import repeat_times_two_ways
from counterpane.craft.rules.wording.row_number_doubled import row_number_doubled
from counterpane.craft.rules.wording.row_number_skipped import row_number_skipped
from counterpane.craft.rules.wording.rows_and_rounds_mixed import rows_and_rounds_mixed
from counterpane.craft.rules.wording.sides_contradict import sides_contradict
from counterpane.craft.rules.wording.sides_not_stated import sides_not_stated
from counterpane.craft.rules.wording.size_not_from_gauge import size_not_from_gauge
from counterpane.craft.rules.wording.size_order_changes import size_order_changes
from counterpane.craft.rules.wording.slip_manner_missing import slip_manner_missing
from counterpane.craft.rules.wording.stitch_worded_twice import stitch_worded_twice
from counterpane.craft.rules.wording.terms_mixed import terms_mixed
from counterpane.craft.rules.wording.units_mixed import units_mixed
from counterpane.craft.rules.wording.yarn_without_amount import yarn_without_amount

RULES: tuple[Rule[Examined], ...] = (
    abbreviation_explained_otherwise,
    abbreviation_explained_twice,
    abbreviation_not_explained,
    abbreviation_not_used,
    attachment_near_a_baby,
    bind_off_missing,
    colour_change_shows_bumps,
    colour_not_explained,
    count_not_printed,
    end_side_wrong,
    front_matter_missing,
    gauge_over_little,
    gauge_without_rows,
    gauge_without_texture,
    length_without_unit,
    marker_left_over,
    measures_disagree,
    needle_size_unclear,
    repeat_across_parts,
    repeat_extent_unclear,
    repeat_times_two_ways,
    row_number_doubled,
    row_number_skipped,
    rows_and_rounds_mixed,
    sides_contradict,
    sides_not_stated,
    size_not_from_gauge,
    size_order_changes,
    slip_manner_missing,
    stitch_worded_twice,
    terms_mixed,
    units_mixed,
    yarn_without_amount,
)
