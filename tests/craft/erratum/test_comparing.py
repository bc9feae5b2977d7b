"""Two writings of a pattern held against each other: whatever they are, nothing is missed and nothing told twice."""

from __future__ import annotations

from collections import Counter
from dataclasses import replace

import pytest
from hypothesis import given
from hypothesis import strategies as st

from counterpane.craft.erratum import Change, Line, Place
from counterpane.craft.erratum.comparing import changes, in_sizes

BODY = tuple(
    Line(f"Body/row {n}", "row", Place("Body", f"row {n}"), f"Row {n}: knit.", 16 + n, 1, 60) for n in range(1, 5)
)
AGAIN = Line("Body/repeat 1", "repeat", Place("Body", "repeat"), "Rep rows 1–4 five times more.", 21, 20)
CASTING = Line("Cast-on", "cast-on", Place("Cast-on"), "Cast on 60 sts.", 0, stitches=60)
OPENINGS = Line("Cautions/hole", "caution", Place("Cautions", "hole"), "note (R1, house): 3 mm.")
WHOLE = (OPENINGS, CASTING, *BODY, AGAIN)


@st.composite
def writings(draw: st.DrawFn) -> tuple[Line, ...]:
    """Draw a writing: some of a few keys in any order, each with one of a few texts and counts."""
    keys = draw(st.lists(st.sampled_from("abcdefgh"), unique=True))
    texts, counts = st.sampled_from(["knit", "purl"]), st.sampled_from([None, 60, 62])
    return tuple(Line(key, "row", Place("Body", key), draw(texts), 1, 1, draw(counts)) for key in keys)


def only(old: Line, fresh: Line, *, for_safety: bool = False) -> Change:
    """Return the one change that a single line makes."""
    (found,) = changes(WHOLE, tuple(fresh if line == old else line for line in WHOLE), for_safety=for_safety)
    return found


class TestWhateverIsWritten:
    """Properties of any two writings."""

    @given(writings())
    def test_a_writing_beside_itself_gives_nothing(self, lines: tuple[Line, ...]) -> None:
        """There is nothing to mend."""
        assert changes(lines, lines) == ()

    @given(writings(), writings())
    def test_the_old_text_mended_by_the_changes_is_the_fresh_one(
        self, old: tuple[Line, ...], fresh: tuple[Line, ...]
    ) -> None:
        """Each key has the text and count of the fresh writing, and those left out are gone."""
        mended = {line.key: (line.text, line.stitches) for line in old}
        for change in changes(old, fresh):
            assert mended.pop(change.key, (None, None)) == (change.old, change.old_stitches)
            if change.fresh is not None:
                mended[change.key] = (change.fresh, change.fresh_stitches)
        assert mended == {line.key: (line.text, line.stitches) for line in fresh}

    @given(writings(), writings())
    def test_each_line_that_differs_is_told_exactly_once(self, old: tuple[Line, ...], fresh: tuple[Line, ...]) -> None:
        """Counted apart from the comparison, by the sets of what is written."""
        one, other = ({(line.key, line.text, line.stitches) for line in lines} for lines in (old, fresh))
        told = Counter(change.key for change in changes(old, fresh))
        assert told == Counter({key for key, *_ in one ^ other})


class TestPastTheRow:
    """What is said to who has worked past the place."""

    def test_a_row_is_first_worked_where_it_stands(self) -> None:
        """Row 3 of a body that begins on row 17 is row 19: who is past row 18 rips back to it, or leaves it."""
        found = only(BODY[2], replace(BODY[2], text="Row 3: purl."))
        assert (found.past_row, found.rip_back_to, found.may_stay) == (18, 18, True)
        assert found.advice.startswith("If you are past row 18 of the blanket: rip back to the end of row 18. Or leave")

    def test_a_row_that_leaves_other_counts_cannot_stay(self) -> None:
        """What follows would not come out."""
        found = only(BODY[2], replace(BODY[2], text="Row 3: k1, yo, k to end.", stitches=61))
        assert (found.past_row, found.may_stay) == (18, False)
        assert found.advice.endswith("It cannot be left: what follows would not come out.")

    @pytest.mark.parametrize(("rows", "past"), [(24, 40), (16, 36)])
    def test_a_repeat_parts_after_the_fewer_of_its_rows(self, rows: int, past: int) -> None:
        """Six times or four times in place of five, of 4 rows from row 21."""
        found = only(AGAIN, replace(AGAIN, text="Rep rows 1–4 more.", rows=rows))
        assert (found.past_row, found.may_stay) == (past, True)

    def test_an_odd_number_of_rows_more_cannot_stay(self) -> None:
        """The part that follows would begin on the other side."""
        assert not only(AGAIN, replace(AGAIN, text="Work 21 rows.", rows=21)).may_stay

    def test_another_cast_on_count_is_begun_again(self) -> None:
        """Every count rests on it."""
        found = only(CASTING, replace(CASTING, text="Cast on 62 sts.", stitches=62))
        assert (found.past_row, found.may_stay) == (0, False)
        assert found.advice.startswith("If you have begun the blanket: rip it out and begin again.")

    def test_a_border_of_its_own_counts_its_own_rows(self) -> None:
        """Who is past row 4 of the left border has worked more of that border, not of the blanket."""
        line = Line("Left/row 5", "row", Place("Left border", "row 5"), "Row 5: knit.", 5, 1, 90, "Left border")
        (found,) = changes((line,), (replace(line, text="Row 5: purl."),))
        assert found.advice.startswith("If you are past row 4 of the left border:")


class TestSafety:
    """What is read for safety."""

    def test_a_changed_caution_stands_first_and_is_marked(self) -> None:
        """Wherever it stands in the pattern."""
        caution = replace(OPENINGS, text="stop (R1, published): 9 mm.")
        found = changes((*BODY, OPENINGS), (replace(BODY[0], text="Row 1: purl."), *BODY[1:], caution))
        assert [each.is_of_safety for each in found] == [True, False]
        assert "before the blanket is used" in found[0].advice

    def test_what_mends_a_fault_of_safety_is_not_left(self) -> None:
        """Even where every count holds."""
        found = only(BODY[2], replace(BODY[2], text="Row 3: purl."), for_safety=True)
        assert not found.may_stay
        assert found.advice.endswith("this is a correction of safety.")


class TestSizes:
    """A graded pattern."""

    def test_a_change_names_the_sizes_that_it_hits(self) -> None:
        """Alike in two sizes it stands once for both; otherwise in the third, once more."""
        small = changes(WHOLE, (*WHOLE[:3], replace(WHOLE[3], text="Row 2: purl."), *WHOLE[4:]))
        large = changes(WHOLE, (*WHOLE[:3], replace(WHOLE[3], text="Row 2: k2."), *WHOLE[4:]))
        found = in_sizes({"small": small, "medium": small, "large": large, "huge": ()})
        assert [(each.sizes, each.fresh) for each in found] == [
            (("small", "medium"), "Row 2: purl."),
            (("large",), "Row 2: k2."),
        ]


class TestWhatIsNotWorkedOrEnds:
    """Lines that tell about the work, and those at its edges."""

    MATERIALS = Line("Materials/Needle", "told", Place("Materials", "Needle"), "4 mm.")
    NOTE = Line("Notes/n", "told", Place("Notes"), "Slip loosely.")
    OFF = Line("Bind-off", "bind-off", Place("Bind-off"), "Bind off all 60 sts on the RS.", 41, stitches=60)

    def test_a_line_that_tells_is_read_compared_or_gone(self) -> None:
        """There is nothing to rip; who has other yarn or needles than the fresh text compares."""
        (other,) = changes((self.MATERIALS,), (replace(self.MATERIALS, text="4.5 mm."),))
        (read,) = changes((self.NOTE,), (replace(self.NOTE, text="Slip firmly."),))
        (gone,) = changes((self.NOTE,), ())
        assert other.advice == "Nothing to rip: compare it with what you have."
        assert read.advice == "Nothing to rip: read this instead."
        assert gone.advice == "Nothing to rip: this is left out."
        assert {other.past_row, read.past_row, gone.past_row} == {None}

    @pytest.mark.parametrize(
        ("for_safety", "end"),
        [(False, "the edge is worked by the old text."), (True, "this is a correction of safety.")],
    )
    def test_another_bind_off_is_undone_and_worked_again(self, for_safety: bool, end: str) -> None:
        """It is the last edge: nothing stands above it. Where it is of safety it is not left."""
        fresh = replace(self.OFF, text="Bind off all 60 sts loosely.")
        (found,) = changes((self.OFF,), (fresh,), for_safety=for_safety)
        assert found.advice.startswith("If you have bound off, undo the bind-off and work it again.")
        assert found.advice.endswith(end)

    def test_another_cast_on_of_as_many_stitches_may_stay(self) -> None:
        """Only the first edge looks otherwise."""
        found = only(CASTING, replace(CASTING, text="Cast on 60 sts with two needles."))
        assert found.may_stay
        assert found.advice.endswith("Or leave it: the count is the same, and only the first edge looks otherwise.")
