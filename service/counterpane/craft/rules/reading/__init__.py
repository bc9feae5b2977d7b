"""Rules about reading: what the words do not say, or say twice."""

from counterpane.craft.checking import Examined
from counterpane.craft.findings import Rule
from counterpane.craft.rules.reading.ambiguous_term import ambiguous_term
from counterpane.craft.rules.reading.asks_for_nothing import asks_for_nothing
from counterpane.craft.rules.reading.bracket_not_closed import bracket_not_closed
from counterpane.craft.rules.reading.brackets_too_deep import brackets_too_deep
from counterpane.craft.rules.reading.cast_on_differs import cast_on_differs
from counterpane.craft.rules.reading.count_not_whole import count_not_whole
from counterpane.craft.rules.reading.label_not_known import label_not_known
from counterpane.craft.rules.reading.no_rows import no_rows
from counterpane.craft.rules.reading.repeat_assumed import repeat_assumed
from counterpane.craft.rules.reading.repeat_without_end import repeat_without_end
from counterpane.craft.rules.reading.repeat_without_start import repeat_without_start
from counterpane.craft.rules.reading.row_says_nothing import row_says_nothing
from counterpane.craft.rules.reading.row_too_long import row_too_long
from counterpane.craft.rules.reading.sizes_differ_in_number import sizes_differ_in_number
from counterpane.craft.rules.reading.too_many_rows import too_many_rows
from counterpane.craft.rules.reading.too_many_unknown_terms import too_many_unknown_terms
from counterpane.craft.rules.reading.unknown_row import unknown_row
from counterpane.craft.rules.reading.unknown_term import unknown_term

RULES: tuple[Rule[Examined], ...] = (
    unknown_term,
    ambiguous_term,
    bracket_not_closed,
    repeat_without_start,
    repeat_without_end,
    brackets_too_deep,
    row_says_nothing,
    asks_for_nothing,
    count_not_whole,
    row_too_long,
    unknown_row,
    too_many_rows,
    too_many_unknown_terms,
    label_not_known,
    no_rows,
    repeat_assumed,
    sizes_differ_in_number,
    cast_on_differs,
)
