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
