"""Rules about fabric: gauges and what they leave open, borders against the body, edges and corners."""

from __future__ import annotations

from counterpane.craft.constructions.attempts import Attempt
from counterpane.craft.findings import Rule
from counterpane.craft.rules.fabric.band_draws_in import band_draws_in
from counterpane.craft.rules.fabric.bind_off_on_other_side import bind_off_on_other_side
from counterpane.craft.rules.fabric.body_ends_unlike_start import body_ends_unlike_start
from counterpane.craft.rules.fabric.body_unbalanced import body_unbalanced
from counterpane.craft.rules.fabric.border_draws_in import border_draws_in
from counterpane.craft.rules.fabric.border_frills import border_frills
from counterpane.craft.rules.fabric.border_narrow_for_curl import border_narrow_for_curl
from counterpane.craft.rules.fabric.edge_binds import edge_binds
from counterpane.craft.rules.fabric.edge_flares import edge_flares
from counterpane.craft.rules.fabric.edges_look_unlike import edges_look_unlike
from counterpane.craft.rules.fabric.edges_stretch_unlike import edges_stretch_unlike
from counterpane.craft.rules.fabric.gauge_borrowed import gauge_borrowed
from counterpane.craft.rules.fabric.gauge_not_washed import gauge_not_washed
from counterpane.craft.rules.fabric.gauge_texture_unstated import gauge_texture_unstated
from counterpane.craft.rules.fabric.gauge_unlikely import gauge_unlikely
from counterpane.craft.rules.fabric.gauge_window_small import gauge_window_small
from counterpane.craft.rules.fabric.moss_corner_breaks import moss_corner_breaks
from counterpane.craft.rules.fabric.odd_repeat_changes_sides import odd_repeat_changes_sides
from counterpane.craft.rules.fabric.one_sided_among_reversible import one_sided_among_reversible
from counterpane.craft.rules.fabric.rows_differ_in_height import rows_differ_in_height
from counterpane.craft.rules.fabric.side_border_waves import side_border_waves
from counterpane.craft.rules.fabric.textures_fight import textures_fight
from counterpane.craft.rules.fabric.textures_merge import textures_merge

RULES: tuple[Rule[Attempt], ...] = (
    band_draws_in,
    bind_off_on_other_side,
    body_ends_unlike_start,
    body_unbalanced,
    border_draws_in,
    border_frills,
    border_narrow_for_curl,
    edge_binds,
    edge_flares,
    edges_look_unlike,
    edges_stretch_unlike,
    gauge_borrowed,
    gauge_not_washed,
    gauge_texture_unstated,
    gauge_unlikely,
    gauge_window_small,
    moss_corner_breaks,
    odd_repeat_changes_sides,
    one_sided_among_reversible,
    rows_differ_in_height,
    side_border_waves,
    textures_fight,
    textures_merge,
)
