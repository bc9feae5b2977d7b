"""`counterpane sheet`: the editor's questions to the designer of a text, kept in a file beside it."""

from __future__ import annotations

import argparse
from dataclasses import replace
from pathlib import Path
from typing import TYPE_CHECKING

from counterpane.cli import endings, output
from counterpane.cli.inputs import Given, read_text
from counterpane.cli.options import folder, stitches, take_input, take_json, take_terms

if TYPE_CHECKING:
    from counterpane.craft.editing import Sheet
    from counterpane.craft.styles import Style

FORMS = ("text", "markdown", "json")
ENDING = ".sheet.toml"
NAME = "sheet"
ABOUT = """Keep the editor's sheet of a text: each finding as a question to the designer, in a file beside the text.

Write answers and decisions into that file and run the command again when the text has changed: what was corrected is
settled, what came up is asked, and nothing that you wrote is touched. The exit status is 1 while an error waits."""
EXAMPLES = """examples:
  $ counterpane sheet rows.txt
  $ counterpane sheet rows.txt --style counterpane --as markdown
  $ counterpane sheet rows.txt --sheet questions.toml --json"""


def declare(parser: argparse.ArgumentParser) -> None:
    """Add the options."""
    take_input(parser, "a text of rows")
    unset = f"else the name of the text with {ENDING}"
    parser.add_argument("--sheet", type=folder, metavar="PATH", help=f"the file of the sheet ({unset})")
    parser.add_argument("--style", metavar="STYLE", help="hold the text against a house style too: a name, or a file")
    parser.add_argument("--cast-on", type=stitches, metavar="N", help="begin with N stitches, whatever the text says")
    take_terms(parser, "else as the sheet or the text has them")
    parser.add_argument("--as", dest="form", metavar="FORM", default="text", help=f"one of {', '.join(FORMS)}")
    take_json(parser)


def run(options: argparse.Namespace) -> int:
    """Check the text, write its sheet again, and show it."""
    form = "json" if options.json else options.form
    if form not in FORMS:
        raise endings.Unreadable(f"a sheet cannot be shown as {form!r}", f"Forms are {', '.join(FORMS)}.")
    path = _path(options)
    given, earlier = read_text(options.file), _earlier(path)
    sheet = _asked(_read(earlier), options)
    with output.waiting(f"checking {given.name}"):
        after = _checked(given, sheet)
    _save(path, after, earlier)
    _show(given, sheet, after, form)
    return endings.FOUND if _has_errors(after) else endings.DONE


def _path(options: argparse.Namespace) -> Path:
    """Return where the sheet is kept."""
    if options.sheet is not None:
        return Path(options.sheet)
    if options.file == "-":
        raise endings.Unreadable("standard input has no place beside it", "Name the file of the sheet with --sheet.")
    return Path(options.file).with_suffix(ENDING)


def _earlier(path: Path) -> Given | None:
    return read_text(str(path)) if path.exists() else None


def _read(earlier: Given | None) -> Sheet:
    """Read the sheet; one that does not hold is refused with its line, and its file is left as it is."""
    from counterpane.craft.editing import Sheet
    from counterpane.press.sheet_files import SheetFault, read_sheet

    try:
        return read_sheet(earlier.text) if earlier else Sheet()
    except SheetFault as fault:
        name = earlier.name if earlier else ""
        raise endings.Unreadable(f"{name}, line {fault.line}: {fault}", fault.hint) from None


def _asked(sheet: Sheet, options: argparse.Namespace) -> Sheet:
    """Return the sheet with the manner of checking that was typed, which beats its own."""
    name = "standard input" if options.file == "-" else Path(options.file).name
    typed = {"cast_on": options.cast_on, "terms": options.terms, "style": options.style}
    return replace(sheet, text=sheet.text or name, **{key: value for key, value in typed.items() if value is not None})


def _checked(given: Given, sheet: Sheet) -> Sheet:
    """Check the text, unless the sheet is plainly that of another one."""
    from counterpane.library.texts.sheets import belongs, check_sheet
    from counterpane.seeding import load_vocabulary

    if Path(given.name).name != sheet.text and not belongs(sheet, given.text):
        hint = "Give this text a sheet of its own with --sheet; or, if it is the same pattern, write its name there."
        raise endings.NotPermitted(f"the sheet is that of another text, {sheet.text}", hint)
    return check_sheet(given.text, load_vocabulary(), sheet, _style(sheet.style) if sheet.style else None)


def _style(name: str) -> Style | None:
    """Return a style by its slug, or from a file of one's own."""
    from counterpane.library.texts.sheets import style_of
    from counterpane.seeding import load_vocabulary
    from counterpane.seeding.styles import load_style, load_styles

    styles = load_styles()
    if name not in styles and (Path(name).is_file() or Path(name).suffix == ".toml"):
        try:
            return load_style(Path(name), load_vocabulary())
        except FileNotFoundError:
            raise endings.Missing(f"{name}: there is no such file", "Check the name of the style.") from None
    return style_of(styles, name)


def _save(path: Path, sheet: Sheet, earlier: Given | None) -> None:
    """Write the sheet whole or not at all, and only where something changed."""
    from counterpane.press.sheet_files import as_toml

    text = as_toml(sheet, earlier.text if earlier else "")
    if earlier is None or text != earlier.text:
        output.save(path, ("\ufeff" if earlier and earlier.marked else "") + text)
        output.tell(f"wrote {path}")


def _show(given: Given, before: Sheet, after: Sheet, form: str) -> None:
    """Show the sheet in a form."""
    if form == "json":
        from counterpane.library.texts.sheets import sheet_json

        output.put_json(sheet_json(after))
    elif form == "markdown":
        from counterpane.press.sheets import as_markdown

        output.put(as_markdown(after, Path(given.name).stem))
    else:
        from counterpane.cli.showing import sheets

        with output.page() as console:
            sheets.draw(console, given.name, after, before.checked not in (None, after.checked))


def _has_errors(sheet: Sheet) -> bool:
    from counterpane.craft.editing import STANDING

    return any(query.severity == "error" and query.state in STANDING for query in sheet.queries)
