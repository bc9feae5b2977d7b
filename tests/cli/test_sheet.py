"""`counterpane sheet`: the whole story with real files, and every refusal that keeps what a person wrote."""

from __future__ import annotations

import json
import os
from pathlib import Path

import pytest

from cli.conftest import Type

LEAF = """Leaf blanket

Cast on 20 sts.
Row 1 (RS): K2, *p3, k3; rep from * to end.
Row 2: *P3, k3; rep from * to last 2 sts, p3.
Row 3: K2, skq, k to end.
Row 4: K2, skq, k to end.
"""


@pytest.fixture
def leaf(tmp_path: Path) -> Path:
    """Return a broken pattern in a file."""
    path = tmp_path / "leaf.txt"
    path.write_text(LEAF)
    return path


def answer(path: Path, row: str, **written: str) -> None:
    """Write into the queries of a row about an error, as a person does."""
    head, *queries = path.read_text().split("\n[[query]]\n")
    for index, query in enumerate(queries):
        if f'row = "{row}"\n' in query and 'severity = "error"' in query:
            for name, words in written.items():
                queries[index] = queries[index].replace(f'{name} = ""', f"{name} = {words}")
    path.write_text("\n[[query]]\n".join([head, *queries]))


def states(typed: Type, name: str = "leaf.txt", *more: str) -> dict[str, str]:
    """Check again and return the states of the queries about errors, by row."""
    queries = json.loads(typed("sheet", name, "--json", *more).out)["queries"]
    return {query["row"]: query["state"] for query in queries if query["severity"] == "error"}


def test_from_a_broken_pattern_to_a_settled_sheet(typed: Type, leaf: Path, tmp_path: Path) -> None:
    """The first run asks, the designer answers by hand, the text is mended, and the second run settles."""
    done = typed("sheet", "leaf.txt")
    sheet = tmp_path / "leaf.sheet.toml"
    assert (done.status, done.err) == (1, "wrote leaf.sheet.toml\n")
    assert "Row 3, line 6, at “skq”: open error (unknown-term)" in done.out and "did you mean “skp”?" in done.out
    answer(sheet, "2", answer="'p2, of \"course\" \\'", decision='"change"')
    answer(sheet, "3", answer='"""\nYes:\n[[query]] # skp\n"""', decision='"change"')
    written = [
        line for line in sheet.read_text().splitlines() if line.startswith(("answer", "decision", "[[query]] #"))
    ]
    leaf.write_text(LEAF.replace("2 sts, p3", "2 sts, p2").replace("skq", "k2tog", 1).replace("Leaf", "By Ada\n\nLeaf"))
    done = typed("sheet", "leaf.txt")
    assert "2 settled; the text has changed since it was last checked" in done.out
    assert "(row 2, line 5) and" in done.out and "(row 3, line 6)." in done.out
    assert states(typed) == {"2": "settled", "3": "settled", "4": "open"}
    again = [line for line in sheet.read_text().splitlines() if line.startswith(("answer", "decision", "[[query]] #"))]
    assert again == written


def test_a_decided_change_that_did_not_help_is_still_there(typed: Type, leaf: Path, tmp_path: Path) -> None:
    """The editor sees at once what was touched in vain."""
    typed("sheet", "leaf.txt")
    answer(tmp_path / "leaf.sheet.toml", "2", decision='"change"')
    assert states(typed) == {"2": "to change", "3": "open", "4": "open"}
    leaf.write_text(LEAF.replace("p3.\n", "p4.\n"))
    assert states(typed) == {"2": "still there", "3": "open", "4": "open"}
    leaf.write_text(LEAF.replace("p3.\n", "p2.\n"))
    assert states(typed)["2"] == "settled"
    leaf.write_text(LEAF)
    assert states(typed)["2"] == "back"


def test_a_query_meant_so_is_kept_and_gives_the_line_that_says_so(typed: Type, leaf: Path, tmp_path: Path) -> None:
    """An error that is kept does not end the command with 1."""
    leaf.write_text("Cast on 10 sts.\nRow 1: K4, skq, k4.\n")
    assert typed("sheet", "leaf.txt").status == 1
    answer(tmp_path / "leaf.sheet.toml", "1", decision='"keep"', answer='"My own stitch: see the notes."')
    done = typed("sheet", "leaf.txt")
    assert done.status == 0
    assert "        Accept unknown-term: My own stitch: see the notes.\n" in done.out
    assert "put this line above row 1 (line 2):" in done.out


def test_the_line_of_acceptance_put_into_the_text_is_understood(typed: Type, leaf: Path, tmp_path: Path) -> None:
    """The finding stays kept, and the line is not offered again; taken out, and not decided, it is asked about."""
    accepted = "Cast on 10 sts.\nAccept row-leaves-stitches: the rest waits on a holder.\nRow 1: K7.\n"
    leaf.write_text(accepted)
    done = typed("sheet", "leaf.txt")
    assert "1 kept" in done.out and "put this line" not in done.out
    leaf.write_text(accepted.replace("Accept", "Once"))
    assert states(typed) == {"1": "open"}
    answer(tmp_path / "leaf.sheet.toml", "1", decision='"keep"')
    leaf.write_text(accepted)
    assert "1 kept" in typed("sheet", "leaf.txt").out


def test_a_run_without_a_change_writes_nothing(typed: Type, leaf: Path, tmp_path: Path) -> None:
    """The file has the time at which a person last saved it."""
    typed("sheet", "leaf.txt")
    os.utime(tmp_path / "leaf.sheet.toml", (1, 1))
    assert typed("sheet", "leaf.txt").err == ""
    assert (tmp_path / "leaf.sheet.toml").stat().st_mtime == 1


def test_a_style_adds_its_queries_and_is_remembered(typed: Type, leaf: Path) -> None:
    """Also one from a file of one's own."""
    Path("own.toml").write_text('slug = "own"\nname = "Own"\nsummary = "Ours."\nbasis = "house"\nfirst_letter = "k2"\n')
    typed("sheet", "leaf.txt", "--style", "own.toml")
    rules = [query["rule"] for query in json.loads(typed("sheet", "leaf.txt", "--json").out)["queries"]]
    assert rules.count("style-first-letter") == 1


@pytest.mark.parametrize(
    ("style", "status", "said"),
    [
        ("counterpain", 3, "Probably meant: counterpane."),
        ("gone.toml", 3, "gone.toml: there is no such file"),
        ("bad.toml", 2, "bad.toml: cuont: unknown key. Probably meant: count."),
    ],
)
def test_a_style_that_cannot_be_had_is_refused(typed: Type, leaf: Path, style: str, status: int, said: str) -> None:
    """The sheet is not begun."""
    Path("bad.toml").write_text('slug = "own"\nname = "Own"\nsummary = "Ours."\nbasis = "house"\ncuont = "x"\n')
    done = typed("sheet", "leaf.txt", "--style", style)
    assert done.status == status and said in done.err
    assert not Path("leaf.sheet.toml").exists()


def test_a_sheet_that_cannot_be_read_is_left_as_it_is(typed: Type, leaf: Path, tmp_path: Path) -> None:
    """The message names the line, and no sign of the file is touched."""
    sheet = tmp_path / "leaf.sheet.toml"
    sheet.write_text('# mine\n[[query]]\nquestion = "a"\nanwser = "b"\n')
    done = typed("sheet", "leaf.txt")
    assert (done.status, done.out) == (2, "")
    assert "leaf.sheet.toml, line 4: anwser: There is no such member here." in done.err
    assert "Probably meant: answer." in done.err
    assert sheet.read_text() == '# mine\n[[query]]\nquestion = "a"\nanwser = "b"\n'


def test_a_sheet_of_another_text_is_told(typed: Type, leaf: Path, tmp_path: Path) -> None:
    """Its queries would all look settled."""
    typed("sheet", "leaf.txt")
    before = (tmp_path / "leaf.sheet.toml").read_bytes()
    (tmp_path / "fan.txt").write_text("Row 1: *K2, p2; rep from * to end.\n")
    done = typed("sheet", "fan.txt", "--sheet", "leaf.sheet.toml")
    assert done.status == 4 and "the sheet is that of another text, leaf.txt" in done.err
    assert (tmp_path / "leaf.sheet.toml").read_bytes() == before


def test_the_second_version_of_a_text_goes_on_with_its_sheet(typed: Type, leaf: Path, tmp_path: Path) -> None:
    """A text under another name with lines of the first is the same pattern."""
    typed("sheet", "leaf.txt")
    (tmp_path / "leaf-2.txt").write_text(LEAF.replace("2 sts, p3", "2 sts, p2"))
    after = states(typed, "leaf-2.txt", "--sheet", "leaf.sheet.toml")
    assert after == {"2": "settled", "3": "open", "4": "open"}


def test_standard_input_needs_a_place_for_its_sheet(typed: Type, tmp_path: Path) -> None:
    """The sheet is kept where it was said."""
    assert typed("sheet", "-", stdin=LEAF).status == 2
    assert typed("sheet", "-", "--sheet", "kept.toml", stdin=LEAF).status == 1
    assert (tmp_path / "kept.toml").exists()


@pytest.mark.parametrize(("typed_form", "begins"), [(["--as", "markdown"], "# leaf: questions"), (["--json"], "{\n")])
def test_a_sheet_has_a_form_for_people_and_one_for_programs(
    typed: Type, leaf: Path, typed_form: list[str], begins: str
) -> None:
    """The form changes what is shown and not what is kept."""
    assert typed("sheet", "leaf.txt", *typed_form).out.startswith(begins)
    assert Path("leaf.sheet.toml").exists()


def test_a_form_that_there_is_not_is_refused(typed: Type, leaf: Path) -> None:
    """The forms are named."""
    assert "Forms are text, markdown, json." in typed("sheet", "leaf.txt", "--as", "pdf").err


def test_a_mark_before_the_sheet_stays(typed: Type, leaf: Path, tmp_path: Path) -> None:
    """A byte order mark is a thing of the editor that saved the file."""
    (tmp_path / "leaf.sheet.toml").write_text("\ufeff# mine\r\n", newline="")
    typed("sheet", "leaf.txt")
    assert (tmp_path / "leaf.sheet.toml").read_bytes().startswith(b"\xef\xbb\xbf# mine\r\n")
