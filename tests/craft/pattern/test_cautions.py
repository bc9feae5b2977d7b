"""The safety record of a pattern."""

from counterpane.craft.pattern.cautions import NOTHING_ASSESSED, cautions

FINDING = {
    "rule": "opening-takes-a-fingertip",
    "reference": "R11",
    "severity": "warn",
    "basis": "borrowed",
    "markets": ["UK"],
    "message": "An opening takes a fingertip.",
    "source": "a report",
}


def test_without_an_answer_nothing_was_assessed() -> None:
    """Silence is no pass, and says so."""
    assert cautions({}, {}, "us").standing == (NOTHING_ASSESSED,)


def test_a_finding_keeps_its_reference_basis_and_source() -> None:
    """A knitter can ask where a figure comes from."""
    (found,) = cautions({"findings": [FINDING]}, {}, "us").findings
    assert (found.reference, found.basis, found.source, found.markets) == ("R11", "borrowed", "a report", ("UK",))


def test_a_stop_is_known_before_one_begins() -> None:
    """A warning is none."""
    assert cautions({"findings": [{**FINDING, "severity": "stop"}]}, {}, "us").says_stop
    assert not cautions({"findings": [FINDING]}, {}, "us").says_stop


def test_rules_that_lacked_figures_are_named() -> None:
    """R17 asks for the ends left; a reference that nobody knows is not lost."""
    told = cautions({"not_assessed": ["R17", "R99"]}, {}, "us")
    assert told.not_assessed == ("yarn end left long (R17)", "R99")


def test_what_a_component_records_is_said_once_for_all_its_places() -> None:
    """None, a value and not known are three things."""
    notes = {"loose_yarn": {"value": "1", "unit": "stitches"}, "floats": "none", "ties": "not known"}
    parts = [{"part": place, "component": "garter-border", "notes": notes} for place in ("bottom", "top")]
    (told,) = cautions({"parts": parts}, {"garter-border": "Garter border"}, "us").parts
    assert told.name == "Garter border (bottom, top)"
    assert told.text == "loose yarn 1 stitch; none: floats; not known: ties."


def test_a_part_in_words_has_no_name_and_records_nothing() -> None:
    """Nobody knows what it holds."""
    (told,) = cautions({"parts": [{"part": "body", "component": None, "notes": None}]}, {}, "us").parts
    assert (told.name, told.text) == ("A part given in words (body)", "not known.")


def test_estimates_keep_their_section() -> None:
    """An estimate is printed with where it was made."""
    estimates = {"openings": [{"section": "body", "message": "At most 7.4 mm."}], "strands": []}
    assert cautions({"estimates": estimates}, {}, "us").estimates == ("Openings, body: At most 7.4 mm.",)


def test_a_record_says_for_whom_it_was_read() -> None:
    """Nothing is said where nobody said for whom."""
    read = {"age_band": "0-3m", "use": None, "markets": ["UK", "US"]}
    assert cautions({"read_for": read}, {}, "us").read_for == "Read for: age 0-3m; use not said; markets UK, US."
    assert cautions({"read_for": {"age_band": None}}, {}, "us").read_for == cautions({}, {}, "us").read_for == ""


def test_a_list_comes_with_the_verdict_of_each_item() -> None:
    """What the place's list came to, and that the place decides."""
    item = {"says": "No holes.", "verdict": "not assessed", "found": "openwork is not known"}
    told = cautions(
        {"profile": {"name": "Ward 3", "dated": "2026-10-01", "items": [item], "about": "It decides."}}, {}, "us"
    )
    assert told.held is not None
    assert told.held.name == "Ward 3, 2026-10-01"
    assert told.held.items == ("Not assessed: No holes. (openwork is not known)", "It decides.")
    assert cautions({"profile": None}, {}, "us").held is None


def test_a_measurement_is_told_with_its_maker() -> None:
    """Who, when, on what, what is not told, and whether it counts."""
    found = {"what": "hole_mm", "value": 4.5, "by": "M. Tester", "on": "2026-11-20", "yarn": "cotton", "counts": True}
    (told,) = cautions({"measured": [{**found, "not_told": ["gauge"]}]}, {}, "us").measured
    assert told == "hole_mm 4.5: M. Tester, 2026-11-20; cotton. Not told: gauge."
    (other,) = cautions({"measured": [{**found, "counts": False}]}, {}, "us").measured
    assert "counts for nothing" in other


def test_sources_that_differ_are_told_where_their_rule_spoke() -> None:
    """Every side stands with its source, and a conflict that touches nothing said is left out."""
    sides = [{"who": "one", "says": "yes", "source": "a"}, {"who": "another", "says": "no", "source": "b"}]
    conflict = {"about": "holes", "rules": ["R11"], "statements": sides, "treated": "Both stand."}
    told = cautions({"findings": [FINDING], "conflicts": [conflict, {**conflict, "rules": ["R05"]}]}, {}, "us")
    assert told.conflicts == ("On holes (R11): one: yes [a]; another: no [b]. Both stand.",)
