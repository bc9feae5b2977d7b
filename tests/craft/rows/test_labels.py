"""Labels as most rows have them are read at once, and say what the way for all labels says."""

from __future__ import annotations

import pytest

from counterpane.craft.rows.labels import label_at


@pytest.mark.parametrize("number", ["0", "1", "07", "12", "2000", "123456789", "1234567890"])
@pytest.mark.parametrize("behind", [" k2, p2.", "", "(rs) k2.", " - k2", "- k2", ": k2", " and all ws rows: p"])
def test_a_plain_label_is_any_other_label(number: str, behind: str) -> None:
    """A blank before the colon, with which a label is no plain one, changes nothing."""
    plain, spaced = f"row {number}:{behind}", f"row {number} :{behind}"
    one, other = label_at(plain, 0, len(plain)), label_at(spaced, 0, len(spaced))
    assert one is not None
    assert other is not None
    assert one[0] == other[0]
    assert plain[one[1] :] == spaced[other[1] :]
