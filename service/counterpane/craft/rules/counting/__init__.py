"""Rules about counting: where a knitter would be stuck, and why."""

from counterpane.craft.checking import Examined
from counterpane.craft.findings import Rule
from counterpane.craft.rules.counting.count_drifts import count_drifts
from counterpane.craft.rules.counting.count_not_followed import count_not_followed
from counterpane.craft.rules.counting.group_uses_several import group_uses_several
from counterpane.craft.rules.counting.repeat_does_not_fit import repeat_does_not_fit
from counterpane.craft.rules.counting.repeat_inside_repeat import repeat_inside_repeat
from counterpane.craft.rules.counting.repeat_uses_nothing import repeat_uses_nothing
from counterpane.craft.rules.counting.row_leaves_stitches import row_leaves_stitches
from counterpane.craft.rules.counting.row_repeat_differs import row_repeat_differs
from counterpane.craft.rules.counting.row_runs_short import row_runs_short
from counterpane.craft.rules.counting.row_upsets_later_rows import row_upsets_later_rows
from counterpane.craft.rules.counting.rows_do_not_join import rows_do_not_join
from counterpane.craft.rules.counting.stated_count_wrong import stated_count_wrong
from counterpane.craft.rules.counting.stated_multiple_wasteful import stated_multiple_wasteful
from counterpane.craft.rules.counting.stated_multiple_wrong import stated_multiple_wrong
from counterpane.craft.rules.counting.two_open_repeats import two_open_repeats

RULES: tuple[Rule[Examined], ...] = (
    row_runs_short,
    row_leaves_stitches,
    repeat_does_not_fit,
    rows_do_not_join,
    two_open_repeats,
    repeat_inside_repeat,
    repeat_uses_nothing,
    group_uses_several,
    stated_count_wrong,
    stated_multiple_wrong,
    stated_multiple_wasteful,
    row_repeat_differs,
    row_upsets_later_rows,
    count_drifts,
    count_not_followed,
)
