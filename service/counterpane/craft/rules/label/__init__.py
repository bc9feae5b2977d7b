"""Rules about what stands on a label: fibres by law, what each market wants, and care."""

from __future__ import annotations

from counterpane.craft.care.labels import Labelled
from counterpane.craft.findings import Finding, Rule
from counterpane.craft.rules.label.care_not_told import care_not_told
from counterpane.craft.rules.label.care_set_by_one_yarn import care_set_by_one_yarn
from counterpane.craft.rules.label.fibre_name_not_known import fibre_name_not_known
from counterpane.craft.rules.label.fibre_name_of_trade import fibre_name_of_trade
from counterpane.craft.rules.label.fibre_process_not_told import fibre_process_not_told
from counterpane.craft.rules.label.fibre_shares_not_whole import fibre_shares_not_whole
from counterpane.craft.rules.label.fibre_state_not_told import fibre_state_not_told
from counterpane.craft.rules.label.left_out_too_heavy import left_out_too_heavy
from counterpane.craft.rules.label.market_field_not_told import market_field_not_told
from counterpane.craft.rules.label.pure_of_several_fibres import pure_of_several_fibres
from counterpane.craft.rules.label.superwash_not_told import superwash_not_told
from counterpane.craft.rules.label.virgin_wool_not_allowed import virgin_wool_not_allowed
from counterpane.craft.rules.label.washed_harder_than_borne import washed_harder_than_borne
from counterpane.craft.rules.label.washing_felts_wool import washing_felts_wool
from counterpane.craft.rules.label.yarn_fibres_not_told import yarn_fibres_not_told
from counterpane.craft.rules.label.yarn_mass_not_told import yarn_mass_not_told

RULES: tuple[Rule[Labelled], ...] = (
    fibre_name_not_known,
    fibre_process_not_told,
    fibre_shares_not_whole,
    fibre_state_not_told,
    pure_of_several_fibres,
    left_out_too_heavy,
    washed_harder_than_borne,
    washing_felts_wool,
    yarn_fibres_not_told,
    yarn_mass_not_told,
    care_not_told,
    superwash_not_told,
    virgin_wool_not_allowed,
    market_field_not_told,
    fibre_name_of_trade,
    care_set_by_one_yarn,
)


def judge_label(label: Labelled) -> tuple[Finding, ...]:
    """Return what the rules of labels say of a piece, errors first."""
    found = [finding for rule in RULES for finding in rule.check(label)]
    return tuple(sorted(found, key=lambda finding: ("error", "warning", "note").index(finding.severity)))
