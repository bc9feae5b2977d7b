"""Rules about fitting: parts that share no count, sides that do not come out, sizes that cannot be reached."""

from __future__ import annotations

from counterpane.craft.constructions.attempts import Attempt
from counterpane.craft.findings import Rule
from counterpane.craft.rules.fitting.bands_share_few_counts import bands_share_few_counts
from counterpane.craft.rules.fitting.border_stops_mid_repeat import border_stops_mid_repeat
from counterpane.craft.rules.fitting.cast_on_inside_part import cast_on_inside_part
from counterpane.craft.rules.fitting.edge_out_of_step import edge_out_of_step
from counterpane.craft.rules.fitting.field_without_use import field_without_use
from counterpane.craft.rules.fitting.left_side_differs import left_side_differs
from counterpane.craft.rules.fitting.length_misses_target import length_misses_target
from counterpane.craft.rules.fitting.length_out_of_reach import length_out_of_reach
from counterpane.craft.rules.fitting.part_begins_on_wrong_side import part_begins_on_wrong_side
from counterpane.craft.rules.fitting.part_cannot_take_number import part_cannot_take_number
from counterpane.craft.rules.fitting.part_count_drifts import part_count_drifts
from counterpane.craft.rules.fitting.part_does_not_join import part_does_not_join
from counterpane.craft.rules.fitting.part_has_no_count import part_has_no_count
from counterpane.craft.rules.fitting.part_needs_rows import part_needs_rows
from counterpane.craft.rules.fitting.part_needs_stitches import part_needs_stitches
from counterpane.craft.rules.fitting.part_of_wrong_kind import part_of_wrong_kind
from counterpane.craft.rules.fitting.parts_share_no_count import parts_share_no_count
from counterpane.craft.rules.fitting.piece_too_large import piece_too_large
from counterpane.craft.rules.fitting.repeats_end_on_wrong_side import repeats_end_on_wrong_side
from counterpane.craft.rules.fitting.row_repeats_run_apart import row_repeats_run_apart
from counterpane.craft.rules.fitting.width_out_of_reach import width_out_of_reach

RULES: tuple[Rule[Attempt], ...] = (
    bands_share_few_counts,
    border_stops_mid_repeat,
    cast_on_inside_part,
    edge_out_of_step,
    field_without_use,
    left_side_differs,
    length_misses_target,
    length_out_of_reach,
    part_begins_on_wrong_side,
    part_cannot_take_number,
    part_count_drifts,
    part_does_not_join,
    part_has_no_count,
    part_needs_rows,
    part_needs_stitches,
    part_of_wrong_kind,
    parts_share_no_count,
    piece_too_large,
    repeats_end_on_wrong_side,
    row_repeats_run_apart,
    width_out_of_reach,
)
