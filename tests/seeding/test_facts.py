"""The facts: each with a source, none twice, and the limits those that the rules use."""

import re
from fractions import Fraction
from pathlib import Path

import pytest

from counterpane.craft.behaviour.figures import FACTS as FIGURES
from counterpane.craft.behaviour.mass import HAND_SPREAD
from counterpane.craft.behaviour.textures import FLAT_ACROSS, FLAT_UPRIGHT, ROLLS
from counterpane.craft.constructions.swatching import LEAST_CM
from counterpane.craft.measures import AS_USUAL
from counterpane.craft.openings import LOOP_HEIGHTS, LOOP_WIDTHS
from counterpane.craft.safety import house, limits
from counterpane.craft.safety.labels import WANTED
from counterpane.craft.safety.words import Market
from counterpane.craft.tails import BIND_OFF_WIDTHS, ROW_WIDTHS
from counterpane.seeding import SeedFault
from counterpane.seeding.facts import load_facts

FACTS = {fact["name"]: fact for fact in load_facts()}
GOOD = """
topic = "t"
[[fact]]
name = "a"
says = "A."
source = "house"
confidence = "memory"
basis = "house"
value = "1"
"""


def written(folder: Path, text: str) -> Path:
    """Write one file of facts and return the folder of seeds."""
    (folder / "facts").mkdir()
    (folder / "facts" / "t.toml").write_text(text, encoding="utf-8")
    return folder


def test_every_fact_names_its_source_and_says_something() -> None:
    """No fact is without words, a source and a place that it speaks for."""
    assert all(fact["says"] and fact["source"] and fact["jurisdiction"] for fact in FACTS.values())


def test_every_figure_has_a_source_a_basis_and_a_confidence_beside_it() -> None:
    """A figure in the value or in the words rests on something, and says how surely that was seen."""
    figures = [fact for fact in FACTS.values() if fact["value"] or re.search(r"\d", fact["says"])]
    assert len(figures) > 200
    assert all(fact["source"] and fact["basis"] and fact["confidence"] for fact in figures)


def test_what_is_from_memory_says_so_twice() -> None:
    """A basis of memory goes with a confidence of memory."""
    assert all(fact["confidence"] == "memory" for fact in FACTS.values() if fact["basis"] == "memory")


def test_what_is_said_to_be_published_was_seen() -> None:
    """What nobody has read, at first or second hand, is neither published nor borrowed."""
    seen = [fact["confidence"] for fact in FACTS.values() if fact["basis"] in ("published", "borrowed")]
    assert {*seen} == {"seen-first-hand", "seen-second-hand"}


@pytest.mark.parametrize(
    ("name", "used"),
    [
        ("opening-fingertip", limits.FINGERTIP_MM),
        ("opening-mesh", limits.ENTRAPMENT_MM),
        ("opening-rigid-clear", limits.RIGID_CLEAR_MM),
        ("loose-thread-longest", limits.LOOSE_MOST_MM),
        ("loop-pulled-longest", limits.PULLED_LOOP_MOST_MM),
        ("loop-round-a-head", limits.HEAD_LOOP_MM),
        ("cord-longest", limits.CORD_MOST_MM),
        ("cord-on-clothing", limits.CORD_NOTICE_MM),
        ("cord-thinnest", limits.CORD_THICK_LEAST_MM),
        ("strap-narrowest", limits.RIBBON_LEAST_MM),
        ("cylinder-width", limits.CYLINDER_MM),
        ("cylinder-deepest", limits.CYLINDER_DEEPEST_MM),
        ("part-gripped", limits.GRIPPED_MM),
        ("pull-small-part", limits.PULL_SMALL_N),
        ("pull-part", limits.PULL_N),
        ("tuck-depth-nl", limits.TUCK_CM),
        ("plain-surface-untested", limits.UNTESTED_GSM),
        ("wool-prickle", limits.PRICKLE_MICRON),
        ("wool-superfine", limits.SUPERFINE_MICRON),
        ("wool-wash", limits.WOOL_WASH_C),
        ("home-wash", limits.HOME_WASH_C),
        ("hospital-wash", limits.HOSPITAL_WASH_C),
        ("formaldehyde-jp", limits.FORMALDEHYDE_MG_KG["JP"]),
        ("formaldehyde-cn", limits.FORMALDEHYDE_MG_KG["CN"]),
        ("formaldehyde-eu", limits.FORMALDEHYDE_MG_KG["EU"]),
        ("azo-dyes", limits.AZO_MG_KG),
        ("decoration-left-out", limits.UNLISTED_DECORATION_PCT),
        ("loop-widths-wet-relaxed", LOOP_WIDTHS),
        ("loop-heights-wet-relaxed", LOOP_HEIGHTS),
        ("loop-spread-hand-knitting", HAND_SPREAD),
        ("yarn-of-a-row", ROW_WIDTHS),
        ("swatch-of-a-part", LEAST_CM),
        ("curl-surplus", ROLLS),
        ("flat-stitches-of-one-face", Fraction(FLAT_ACROSS)),
        ("flat-rows-of-one-face", Fraction(FLAT_UPRIGHT)),
    ],
)
def test_a_limit_is_the_one_that_the_craft_uses(name: str, used: Fraction) -> None:
    """A figure that the code works with is the figure of its fact."""
    assert Fraction(FACTS[name]["value"]) == used


def test_the_sheet_of_house_figures_holds_all_that_the_rules_use() -> None:
    """Every house figure of the rules stands on the sheet to sign, with the same value, and none beside them."""
    sheet = {fact["name"]: fact for fact in FACTS.values() if fact["topic"] == "safety: house figures"}
    assert all(fact["basis"] == "house" and fact["source"] == "house" for fact in sheet.values())
    assert {name: Fraction(fact["value"]) for name, fact in sheet.items() if fact["value"]} == house.FIGURES


def test_a_judgement_without_a_figure_stands_on_the_sheet_too() -> None:
    """What the house decided in words is there to be signed with the figures."""
    words = {name for name, fact in FACTS.items() if fact["topic"] == "safety: house figures" and not fact["value"]}
    assert words == {*house.JUDGEMENTS}


@pytest.mark.parametrize("market", WANTED)
def test_a_label_field_that_the_rules_ask_for_is_a_duty_on_record(market: Market) -> None:
    """The rules name fewer fields than the facts of labels do, and none that no fact calls a duty."""
    wants = [fact["value"] for fact in FACTS.values() if fact["topic"] == "labelling"]
    duties = {want["field"] for want in wants if market in want["markets"] and want["duty"] == "must"}
    on_record = {"tracking": "made", "bilingual": "fibre", "infant-class": "infant_class"}
    assert {on_record.get(field, field) for field in WANTED[market]} <= duties


def test_nobody_has_signed_without_a_name_and_a_day() -> None:
    """A signature is a name and a date, or there is none."""
    signed = [fact["signed"] for fact in FACTS.values() if fact["signed"] is not None]
    assert all(re.fullmatch(r".+, \d{4}-\d{2}-\d{2}", each) for each in signed)


def test_a_swatch_is_read_as_exactly_as_its_fact_says() -> None:
    """Where nobody says how exactly it was read."""
    value = FACTS["swatch-reading-error"]["value"]
    assert (Fraction(value["count"]), Fraction(value["window"])) == (AS_USUAL.count_error, AS_USUAL.window_error_cm)


def test_the_yarn_of_a_bind_off_is_the_generous_end_of_what_is_said() -> None:
    """The bind-off is reckoned with the larger of the two figures found."""
    assert FACTS["yarn-of-a-bind-off"]["value"][-1] == str(BIND_OFF_WIDTHS)


@pytest.mark.parametrize("name", FIGURES)
def test_a_figure_of_behaviour_is_its_fact(name: str) -> None:
    """Ends, unit, basis and source of a figure that the craft works with are those of its fact."""
    fact, figure = FACTS[name], FIGURES[name]
    assert [figure.low, figure.high] == [Fraction(each) for each in fact["value"]]
    assert (figure.unit, figure.basis, figure.source) == (fact["unit"], fact["basis"], fact["source"])


@pytest.mark.parametrize(
    ("old", "new", "place"),
    [
        ('value = "1"', "value = 1", "value"),
        ('value = "1"', 'value = ["1", 2.5]', "value[1]"),
        ('value = "1"', "value = { a = true }", "value.a"),
        ('basis = "house"', 'basis = "hearsay"', "basis"),
        ('source = "house"', "", "source"),
        ('says = "A."', 'says = "A."\nseen = "x"', "seen"),
    ],
)
def test_a_fact_that_does_not_hold_is_refused_at_its_place(tmp_path: Path, old: str, new: str, place: str) -> None:
    """Numbers without quotes, unknown words, and keys too few or too many are faults with their place."""
    with pytest.raises(SeedFault) as fault:
        load_facts(written(tmp_path, GOOD.replace(old, new)))
    assert fault.value.key == f"fact[0].{place}"


def test_two_facts_of_one_name_are_refused(tmp_path: Path) -> None:
    """A name stands once over all files."""
    with pytest.raises(SeedFault, match="stands twice"):
        load_facts(written(tmp_path, GOOD + GOOD.replace('topic = "t"', "")))
