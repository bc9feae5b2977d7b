"""Lists of one number a size, told from every other bracket, and one size chosen from them."""

from __future__ import annotations

import pytest

from counterpane.craft.rows.instructions import read_sizes, read_text
from counterpane.craft.rows.sizes import Sizes, extract_of, for_size, sizes_in
from counterpane.craft.rows.tree import Place
from counterpane.craft.rows.words import normal_lines
from counterpane.craft.stitches import Vocabulary

HEAD = "Cast on 95 (113, 131) sts.\n"


def sizes(text: str) -> Sizes:
    """Return the sizes of a text that is in several."""
    found = sizes_in(normal_lines(text))
    assert found is not None
    return found


def only(text: str, size: int) -> str:
    """Return the last line of a text below the cast-on in the size of this number, from 1."""
    whole = HEAD + text
    return extract_of(whole, sizes(whole), size - 1).text.removeprefix(
        HEAD.replace("95 (113, 131)", str(77 + 18 * size))
    )


@pytest.mark.parametrize(
    ("printed", "number"),
    [
        ("Cast on 95 (113, 131) sts.", 3),
        ("CO 95 [113, 131] sts", 3),
        ("Cast on 95 (113: 131: 149) sts.", 4),
        ("Cast on 95 (113-131) sts.", 3),
        ("Cast on 95 (113, 131)[149, 167] sts.", 5),
        ("Cast on 95 (113) 131 (149) sts.", 4),
        ("Cast on 95 (113) 131 sts.", 3),
        ("Cast on 95 (113) sts.", 2),
        ("Cast on (95, 113, 131) sts.", 3),
        ("Cast on 95/113/131 sts.", 3),
        ("Cast on 110,120,130 sts.", 3),
        ("Row 1: [K1, p1] 3 (4, 5) times.", 3),
        ("Cast on 95 sts (113, 131).", 3),
        ("Using the larger needles, cast on loosely 95 (113,\n131) sts.", 3),
        ("Sizes: preemie (newborn, toddler)\nRow 1: K4 (5, 6).", 3),
        ("Sizes: S, M and L.\nRow 1: K4 (5, 6).", 3),
        ("Sizes: newborn (0-3 months), toddler (1-3 years)\nRow 1: K4 (5).", 2),
        ("Row 1: K4 (5, 6), p2.\nRow 2: P2, k4 (5, 6).", 3),
        ("Sizes: S (M) (L)\nCast on 95 (113) (131) sts.", 3),
    ],
)
def test_the_number_of_sizes_follows_from_what_is_printed(printed: str, number: int) -> None:
    """A cast-on, a list of sizes, or else the rows themselves tell it."""
    assert sizes(printed).number == number


@pytest.mark.parametrize(
    "printed",
    [
        "Cast on 96 sts.\nRow 1: K3, (k2, p2) 4 times, k2 (24 sts).",
        "Cast on 24 sts.\nRow 1: K to end. (24)",
        "Row 2 (4, 6, 8): Purl.",
        "Size: 70 cm (28 in) square. Cast on 20 sts.",
        "Size: 70 x 90 cm (28 x 36 in)\nCast on 20 sts.",
        "Needles: 4 mm (US 6). Gauge: 22 sts (30 rows) to 10 cm (4 in).",
        "Cast on 24 sts (a multiple of 6).",
        "Cast on 1,000,000 sts.\nRow 1: Knit.",
        "Notes (below) and *: see [1] 3 (4, 5) and * 6 (7, 8).",
        "Sizes: preemie, newborn, toddler\nCast on 24 sts.\nRow 1: K24.",
        "Work rows 1-4 (see page 3).\nRow 1 (RS): K2, p2 (k1, p1).",
        "",
    ],
)
def test_a_text_in_one_size_has_no_sizes(printed: str) -> None:
    """Repeats, counts, measures and notes in brackets are no list of numbers."""
    assert sizes_in(normal_lines(printed)) is None


@pytest.mark.parametrize(
    ("printed", "second"),
    [
        ("Row 1: K4 (5, 6), *k2, p2; rep from * 3 (4, 5) times more.", "Row 1: K5, *k2, p2; rep from * 4 times more."),
        ("Row 1: [k2, p2] 12 (14, 16) times. (95 (113, 131) sts)", "Row 1: [k2, p2] 14 times. (113 sts)"),
        ("Row 1: K to end. (95, 113, 131 sts)", "Row 1: K to end. (113 sts)"),
        ("Row 1: K to last 3 (4, 5) sts, k 3 (4, 5).", "Row 1: K to last 4 sts, k 4."),
        ("Row 1: [K2, p2] once (twice, 3 times), k to end.", "Row 1: [K2, p2] twice, k to end."),
        ("Rows 1–8 (10, 12): Knit.", "Rows 1–10: Knit."),
        ("Rep rows 1–4 (10, 12, 14) times.", "Rep rows 1–4 12 times."),
        ("Rep rows 1–4 10 (12, 14) times.", "Rep rows 1–4 12 times."),
        ("Work until piece measures 60 (70, 80) cm / 23½ (27½, 31½) in.", "Work until piece measures 70 cm / 27½ in."),
        ("Materials: 3 (4, 5) balls; buttons (5 in all).", "Materials: 4 balls; buttons (5 in all)."),
        ("Row 1: K(4, 5, 6), p to end. – (95, 113, 131) sts.", "Row 1: K5, p to end. – 113 sts."),
        ("Row 1: K2, 2 - (3, 4, 5) sts.", "Row 1: K2, 2 - 4 sts."),
    ],
)
def test_a_list_becomes_the_number_of_one_size(printed: str, second: str) -> None:
    """The other numbers and the brackets around them go; nothing else is touched."""
    assert only(printed, 2) == second


@pytest.mark.parametrize(
    ("printed", "first"),
    [
        ("Row 1: P4, k0 (1, 2).", "Row 1: P4."),
        ("Row 1: K0 (1, 2), p4.", "Row 1: P4."),
        ("Row 1: P4, k0 (1, 2), p4.", "Row 1: P4, p4."),
        ("Row 1: P4; k0 (1, 2), p4.", "Row 1: P4; p4."),
        ("Row 1: *P4, (k0 (1, 2)) twice, p1; rep from * to end.", "Row 1: *P4, p1; rep from * to end."),
        ("Row 1: P4, [k2, p2] 0 (1, 2) times, p4.", "Row 1: P4, p4."),
        ("Row 1: (p 0 (1, 2)) k to end.", "Row 1: k to end."),
        ("Row 1: K2 (p 0 (1, 2)), k to end.", "Row 1: K2, k to end."),
        ("Row 1: K2 [p 0 (1, 2)] k to end.", "Row 1: K2 k to end."),
        ("Row 1: K2, (p 0 (1, 2)) to end.", "Row 1: K2."),
        ("Row 1: P4, (k0 (1, 2)) 3 (4, 5) times, p4.", "Row 1: P4, p4."),
        ("Row 1: P4, *k2, p2; rep from * 0 (1, 2) times more, p4.", "Row 1: P4, k2, p2; p4."),
        ("Row 1: *P1; rep from * to last 0 (1, 2) sts, k0 (1, 2).", "Row 1: *P1; rep from * to end."),
        ("Row 1: P4, k – (3, 5), p4.", "Row 1: P4, p4."),
        ("Row 1: K to 0 (2, 4) sts before marker, p0 (2, 4), sm, k to end.", "Row 1: K to marker, sm, k to end."),
        ("Row 1: P4, k0 (1, 2) and p4.", "Row 1: P4 and p4."),
        ("Row 1: P4.\nRow 2: K0 (2, 4).\nRow 3: P4.", "Row 1: P4.\nRow 3: P4."),
        ("Row 1: P4.\nRows – (2-3, 2-5): K.\n", "Row 1: P4.\nRows – (2-3, 2-5): K.\n"),
        ("Row 1: P4.\nRow – (2, 2): Knit.\nRow 3: P4.", "Row 1: P4.\nRow 3: P4."),
        ("Row 1: P4.\nRep row 1 0 (1, 2) times, ending with a WS row.\nBind off.", "Row 1: P4.\nBind off."),
        ("Row 1: P4, k0 (1,\n2), p4.", "Row 1: P4,\np4."),
        ("Row 1: P4, k0 (1, 2)", "Row 1: P4"),
        ("Row 1: P4 and k0 (1, 2) then p4.", "Row 1: P4 then p4."),
        ("Row 1: *P4, k1; rep from ** - (1, 2) times more, p4.", "Row 1: *P4, k1; p4."),
        ("Row - (2, 2): K2,\np3,\nk to end.\nRow 3: P4.", "Row 3: P4."),
        ("Row 1: P4, *k2; rep from * 0 (2, 4) times, p4.", "Row 1: P4, *k2; rep from * 0 times, p4."),
        ("Bind off 0 (2, 4) sts, k to end. (0 (93, 111) sts)", "K to end. (0 sts)"),
        ("Row 1: K0 (1, 2) p0 (1, 2), k4.", "Row 1: K4."),
        ("Row 1: P4, k0 (1, 2)\nRow 2: P4.", "Row 1: P4\nRow 2: P4."),
        ("Row 1: K0 (1, 2) *p4; rep from * to end.", "Row 1: *p4; rep from * to end."),
        ("Row 1: P4.\n\nRow – (2, 2): Knit.\n\nRow 3: P4.", "Row 1: P4.\n\nRow 3: P4."),
    ],
)
def test_what_works_nothing_goes_with_its_comma(printed: str, first: str) -> None:
    """A 0 or a dash for this size leaves no trace, in brackets, repeats, stops and whole rows."""
    assert only(printed, 1) == first


def test_what_works_nothing_may_stand_first_in_a_text() -> None:
    """A phrase that begins where the text does is left out like any other."""
    text = "Knit 0 (1, 2) rows.\n" + HEAD
    assert [extract_of(text, sizes(text), size).text.splitlines()[0] for size in range(2)] == [
        "Cast on 95 sts.",
        "Knit 1 rows.",
    ]


@pytest.mark.parametrize(
    "printed",
    [
        "Row 1: K4 (5, 6), p2.",
        "Row 1: K 4 (5, 6), p2 (3, 4).",
        "Row 1: K4 (5,\n6) sts, p2.\nRow 2: Sl4 (5, 6), k2.",
        "Row 1: [K2, p2] once (twice, 3 times), k to end.",
        "Row 1: K2tog (3tog, 3tog), inc2 (3, 4), p2.",
        "Row 1: K4 (5, 6), p2. (7 (8, 9) sts)",
    ],
)
def test_every_size_reads_as_its_own_text_does(printed: str, vocabulary: Vocabulary) -> None:
    """Whether the rows of a size are read anew or made of those of the first, they are the rows of its extract."""
    text = HEAD + printed
    together = [[(row.parts, row.stated) for row in read.rows] for read in read_sizes(text, vocabulary)]
    alone = [read_text(extract_of(text, sizes(text), size).text, vocabulary).rows for size in range(3)]
    assert together == [[(row.parts, row.stated) for row in rows] for rows in alone]


NOTES = [
    ("For size 2 only: work row 1 once more.", "", "Work row 1 once more."),
    ("Row 1 (sizes 2 and 3 only): Knit.", "", "Row 1: Knit."),
    ("Row 1: K4 (size 2 only: k1, p1), k to end.", "Row 1: K4, k to end.", "Row 1: K4 (k1, p1), k to end."),
    ("Row 1: K4, p1 (2nd size only), k to end.", "Row 1: K4, k to end.", "Row 1: K4, p1, k to end."),
    ("Size 1: k3. Size 2: k4. All sizes: k to end.", "K3. K to end.", "K4. K to end."),
    (
        "Sizes 2 and 3 only:\nRow 1: K.\nRow 2: P.\n\nAll sizes:\nRow 3: K.",
        "Row 3: K.",
        "Row 1: K.\nRow 2: P.\n\nRow 3: K.",
    ),
    ("Largest size only: k1.\nRow 1: K.", "Row 1: K.", "Row 1: K."),
    ("Larger sizes only: k1.\nRow 1: K.", "Row 1: K.", "K1.\nRow 1: K."),
    ("Size 1 only: k1. Remaining sizes: p1.", "K1.", "P1."),
    ("Two largest sizes only:\nRow 2: K.\n\nRow 3: P.", "\nRow 3: P.", "Row 2: K.\n\nRow 3: P."),
    ("Row 1: K4 (size 2 only: k1 (2, 3), p1), k to end.", "Row 1: K4, k to end.", "Row 1: K4 (k2, p1), k to end."),
    ("Row 1 (size 2 only): K4 (size 2 only).", "", "Row 1: K4."),
    ("Row 1 (size 2 only): K4, p2 (size 2 only)", "", "Row 1: K4, p2"),
    ("Row 1: K4. (size 2 only", "Row 1: K4.", "Row 1: K4."),
    ("Work row 1 once more for sizes 2-3 only. Purl.", "Purl.", "Work row 1 once more. Purl."),
]


@pytest.mark.parametrize(("printed", "first", "second"), NOTES)
def test_what_is_for_some_sizes_is_left_out_of_the_others(printed: str, first: str, second: str) -> None:
    """The note itself goes in every size."""
    assert (only(printed, 1), only(printed, 2)) == (first, second)


def test_a_note_may_name_a_size() -> None:
    """A name is as good as a number."""
    head = "Sizes: Preemie (Newborn, Toddler)\nCast on 9 (10, 11) sts.\n"
    text = f"{head}For Newborn and Toddler only: knit 1 row.\nPurl 1 row.\n"
    told = [extract_of(text, sizes(text), size).text.splitlines()[2:] for size in range(3)]
    assert told == [["Purl 1 row."], ["Knit 1 row.", "Purl 1 row."], ["Knit 1 row.", "Purl 1 row."]]


def test_every_letter_keeps_its_place() -> None:
    """A stitch behind a list stands at the column of the text as given."""
    text = HEAD + "Row 1: K4 (5, 6), p2."
    line = for_size(sizes(text), 2)[1]
    assert line.text == "row 1: k6, p2."
    assert [line.place(line.text.index(word)) for word in ("6", "p2")] == [Place(2, 15), Place(2, 19)]


def test_a_name_is_given_as_it_is_printed() -> None:
    """Names keep their capitals, which the normal form of a text does not."""
    found = sizes("Sizes: Preemie (Newborn, Toddler)\nCast on 9 (10, 11) sts.")
    assert found.named is not None
    assert [found.given(span) for span in found.named.entries] == ["Preemie", "Newborn", "Toddler"]


def test_a_line_without_lists_is_the_same_in_every_size() -> None:
    """What is read once can be shared."""
    found = sizes(HEAD + "Row 1: Purl.")
    assert for_size(found, 0)[1] is for_size(found, 2)[1]


def test_a_list_of_another_length_is_told_apart() -> None:
    """Two numbers in a text of three sizes are no list of it."""
    found = sizes(HEAD + "Row 1: K4 (5), p2, k3 (4, 5, 6), p1 (2, 3).")
    assert [(each.place, each.entries) for each in found.misfits] == [
        (Place(2, 9), ("4", "5")),
        (Place(2, 21), ("3", "4", "5", "6")),
    ]


def test_a_size_without_a_name_is_named_by_no_note() -> None:
    """A list of names with an empty place is read, and no sentence is taken for its note."""
    text = "Size make (M, \n\nRow Size 2 Sizes (M,"
    found = sizes_in(tuple(normal_lines(text)))
    assert found is None or not any(note.phrase for note in found.notes)


def test_a_list_over_a_line_end_keeps_its_row_whole() -> None:
    """What is left of a line that cannot begin one stands with the line before it; other line ends stay."""
    printed = "Row 1: K4 (5,\n6), p2,\nk (1, 2,\n3) more."
    assert [only(printed, size) for size in (1, 2, 3)] == [
        "Row 1: K4, p2,\nk 1\nmore.",
        "Row 1: K5, p2,\nk 2\nmore.",
        "Row 1: K6, p2,\nk 3 more.",
    ]


def test_a_bracket_without_its_partner_takes_no_other_row_with_it() -> None:
    """What works nothing in a size goes with its own row, however far its bracket would reach."""
    text = "Cast on 60 (80, 100) sts.\nRow 1: Work - (13, 3) rows( in garter.\nRow 2: Purl.\nRow 3: Knit."
    lines = normal_lines(text)
    sizes = sizes_in(lines)
    assert sizes is not None
    assert [line.text for line in for_size(sizes, 0)] == ["cast on 60 sts.", "", "row 2: purl.", "row 3: knit."]
