"""The file of a sheet: read strictly, written so that nothing a person wrote is touched."""

from __future__ import annotations

import tomllib
from dataclasses import replace

import pytest
from hypothesis import given
from hypothesis import strategies as st

from counterpane.craft.editing import Query, Sheet
from counterpane.press.sheet_files import SheetFault, as_toml, read_sheet
from counterpane.press.sheets import as_markdown
from counterpane.press.toml import assignment

FOUND = Query(
    1,
    "Is it 2?",
    rule="row-runs-short",
    severity="error",
    row="3",
    line=4,
    column=8,
    printed="Row 3: K8, p3.",
    words="p3",
    finding="It is 3.",
    suggestions=("Row 3: K8, p2.",),
)
SHEET = Sheet("leaf.txt", "0" * 64, 20, "us", "counterpane", (FOUND, Query(2, "Is the yarn held double?")))
WRITTEN = as_toml(SHEET)
TEXTS = st.text(st.characters(exclude_categories=("Cc", "Cs")) | st.sampled_from("\n\t\"\\'#[]="), max_size=30)


def test_a_sheet_is_read_back_the_same() -> None:
    """What is empty need not stand in the file."""
    assert read_sheet(WRITTEN) == SHEET


@given(TEXTS, TEXTS, TEXTS)
def test_what_a_person_wrote_is_read_back_the_same(answer: str, note: str, question: str) -> None:
    """Whatever signs it is made of."""
    sheet = replace(SHEET, queries=(replace(FOUND, answer=answer, note=note, question=question),))
    assert read_sheet(as_toml(sheet)) == sheet


@given(TEXTS, TEXTS)
def test_what_a_person_wrote_stays_where_other_lines_change(answer: str, note: str) -> None:
    """The very signs of the file stay, and not only what they mean."""
    file = as_toml(replace(SHEET, queries=(replace(FOUND, answer=answer, note=note),)))
    query = replace(FOUND, answer=answer, note=note, state="back", line=77, words='a "b"', hint="Look.", suggestions=())
    after = replace(SHEET, checked="1" * 64, style=None, queries=(query,))
    written = as_toml(after, file)
    assert read_sheet(written) == after
    assert f"\n{assignment('answer', answer)}\n" in written and f"\n{assignment('note', note)}\n" in written


BY_HAND = '''# Mine: ask Ada first.
checked = "{sha}"   # do not touch
text = "leaf.txt"

# The border.
  [[query]]   # urgent
number = 1
answer = """
Two stitches, "really".
[[query]]
\\u00e9 # no comment
"""
decision = 'keep'
note = 'C:\\yarn'
question = "Is it 2?"
rule = "row-runs-short"
state = "open"   # said Ada
line = 4 # near the edge
printed = "Row 3: #1"# both
suggestions = [
  "a",
]

[[query]]
question = "Own?"
# The end.
'''.format(sha="0" * 64)


def test_only_the_lines_that_change_are_written_again() -> None:
    """Comments, blank lines, quotes of all kinds and the order of keys stay byte for byte."""
    sheet = read_sheet(BY_HAND)
    first, own = sheet.queries
    after = replace(sheet, checked="1" * 64, queries=(replace(first, state="kept", line=9), replace(own, number=2)))
    expected = BY_HAND.replace("0" * 64, "1" * 64).replace("line = 4 #", "line = 9 #")
    expected = expected.replace('state = "open"   #', 'state = "kept"   #')
    expected = expected.replace(
        '[[query]]\nquestion = "Own?"', '[[query]]\nstate = "open"\nnumber = 2\nquestion = "Own?"'
    )
    written = as_toml(after, BY_HAND)
    assert sorted(written.splitlines()) == sorted(expected.splitlines())
    assert read_sheet(written) == after


def test_a_text_that_looks_like_keys_is_left_alone() -> None:
    """What stands in quotes is a person's."""
    answer = 'a\nline = 3 # no\nstate = "kept"\n'
    file = as_toml(replace(SHEET, queries=(replace(FOUND, answer=answer),)))
    written = as_toml(replace(SHEET, queries=(replace(FOUND, answer=answer, line=9, state="back"),)), file)
    assert f"\n{assignment('answer', answer)}\n" in written
    assert written.replace("line = 9", "line = 4").replace('state = "back"', 'state = "open"') == file


def test_a_file_with_nothing_to_change_stays_as_it_is() -> None:
    """Line ends of any sort stay as well."""
    for text in (BY_HAND, WRITTEN, WRITTEN.replace("\n", "\r\n")):
        sheet = read_sheet(text)
        numbered = tuple(replace(each, number=each.number or 2) for each in sheet.queries)
        if numbered == sheet.queries:
            assert as_toml(sheet, text) == text


def test_new_queries_follow_with_the_line_ends_of_the_file() -> None:
    """A file of another system stays one."""
    text = WRITTEN.replace("\n", "\r\n").rstrip()
    after = replace(SHEET, queries=(*SHEET.queries, Query(3, "And this?")))
    written = as_toml(after, text)
    assert written.startswith(text) and "\n" not in written.replace("\r\n", "")
    assert read_sheet(written) == after


def test_a_value_in_several_lines_is_replaced_with_its_comments_kept() -> None:
    """Where lines cannot be told apart the query is written anew."""
    after = replace(read_sheet(BY_HAND), queries=(replace(read_sheet(BY_HAND).queries[0], suggestions=("b",)),))
    written = as_toml(after, BY_HAND.partition('[[query]]\nquestion = "Own?"')[0])
    assert read_sheet(written) == after
    assert "# Mine: ask Ada first." in written


@pytest.mark.parametrize(
    ("line", "at", "said", "hint"),
    [
        ('anwser = "x"', 4, "anwser: There is no such member here.", "Probably meant: answer."),
        ("number = 1.5", 4, "number: Write a whole number: this one has a fraction.", ""),
        ('decision = "kepe"', 4, "decision: Write one of: change, keep, done.", ""),
        ("answer = 2026-01-01", 4, "answer: Write a text in quotes.", ""),
        ('answer = "x', 4, "not TOML: ", ""),
        ('[[other]]\nname = "x"', 2, "other: this stands in no query", ""),
        ('answer = "a"\nanswer = "b"', 5, "not TOML: ", ""),
        ("number = 99999999999999999999", 4, "number: ", ""),
    ],
)
def test_what_does_not_fit_is_refused_with_its_line(line: str, at: int, said: str, hint: str) -> None:
    """Nothing is guessed, so nothing written is lost."""
    with pytest.raises(SheetFault) as caught:
        read_sheet(f'text = "leaf.txt"\n[[query]]\nquestion = "Own?"\n{line}\n')
    assert caught.value.line == at
    assert said in str(caught.value) and hint in caught.value.hint


@pytest.mark.parametrize(
    "text", ['query = [{question = "a"}]', "[query]\nquestion = 'a'", "x = [" + "[" * 9_000, "\x00"]
)
def test_a_file_of_another_form_is_refused(text: str) -> None:
    """A sheet has its queries one by one."""
    with pytest.raises(SheetFault):
        read_sheet(text)


def test_an_empty_file_is_an_empty_sheet() -> None:
    """Whoever makes the file first has an empty sheet."""
    assert read_sheet("") == Sheet()
    assert tomllib.loads(as_toml(SHEET, "# mine"))["text"] == "leaf.txt"


def test_the_markdown_asks_what_waits_and_says_what_is_kept() -> None:
    """Signs of Markdown in rows are escaped, settled queries are left out."""
    kept = replace(FOUND, number=2, state="kept", answer="So I like it.")
    gone = replace(FOUND, number=3, state="settled", question="Gone?")
    asked = replace(FOUND, section="Border", printed="Row 3: *K8, [p3] 2 times.", answer="Yes.")
    text = as_markdown(Sheet(queries=(kept, asked, gone, Query(4, "Own?"))), "Leaf")
    assert "> Row 3: \\*K8, \\[p3\\] 2 times." in text
    assert "### 1. Row 3, line 4, at “p3”" in text and "Answer: Yes." in text and "## Border" in text
    assert "- Above row 3 (line 4): `Accept row-runs-short: So I like it.`" in text
    assert "Gone?" not in text and "### 4. The whole pattern" in text
