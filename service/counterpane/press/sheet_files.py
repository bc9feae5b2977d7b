"""A sheet as a TOML file that people edit.

The file is a person's: where it is written again, each line that did not change stays byte for byte, with its comments
and its blank lines, and only the lines of keys that did change are put anew.
"""

from __future__ import annotations

import re
import tomllib
from collections.abc import Mapping, Sequence
from itertools import pairwise
from typing import Any

from counterpane.craft.editing import Sheet
from counterpane.library.texts.sheets import sheet_json, sheet_of
from counterpane.press.toml import assignment
from counterpane_schema.faults import faults_of
from counterpane_schema.sheet import SheetContent

HEAD = """\
# An editor's sheet. Write into `answer` what the designer says, into `decision` one of "change" (the text is to be
# changed), "keep" (it is meant so) and "done", and into `note` what you like; put a question into other words, and add
# questions of your own as [[query]] with a `question` alone. All that stays as you write it, and so do your comments.
# The other lines are written again each time the text is checked.
"""
_WRITTEN = ("question", "answer", "decision", "note")
_FIRST = ("number", "state", *_WRITTEN)
_HEADING = re.compile(r"^[ \t]*\[\[[ \t]*query[ \t]*\]\]", re.MULTILINE)
_HEADING_OR_TEXT = re.compile(
    rf'"""(?:\\.|[^\\])*?"""|\'\'\'.*?\'\'\'|"(?:\\.|[^"\\\n])*"|\'[^\'\n]*\'|#[^\n]*|(?P<heading>{_HEADING.pattern})',
    re.MULTILINE | re.DOTALL,
)
_AT_LINE = re.compile(r"\s*\(at line (\d+), column (\d+)\)$")
Table = dict[str, Any]


class SheetFault(Exception):
    """A sheet's file cannot be used: `line` says where, `hint` what to do."""

    def __init__(self, line: int, message: str, hint: str) -> None:
        super().__init__(message)
        self.line = line
        self.hint = hint


def read_sheet(text: str) -> Sheet:
    """Read the file of a sheet; SheetFault at the first thing that does not fit, so that nothing written is lost."""
    _whole(text)
    parts = _parts(text)
    content = _content(parts)
    faults = faults_of(SheetContent(), content)
    if faults:
        steps = faults[0].pointer.split("/")[1:]
        raise SheetFault(
            _line(parts, steps), f"{steps[-1]}: {faults[0].message}", faults[0].hint or "Correct it there."
        )
    return sheet_of(content)


def as_toml(sheet: Sheet, earlier: str = "") -> str:
    """Write a sheet as TOML; `earlier` is the file that it was read from, of which all that did not change is kept."""
    content = sheet_json(sheet)
    queries = [_stored(each) for each in content.pop("queries")]
    head, *blocks = _parts(earlier) if earlier else [HEAD]
    head = _patched(head, {name: value for name, value in content.items() if value is not None})
    kept = [_patched(block, query) for block, query in zip(blocks, queries, strict=False)]
    end = "\r\n" if "\r\n" in earlier else "\n"
    fresh = [_block(query).replace("\n", end) for query in queries[len(blocks) :]]
    whole = "".join([head, *kept])
    return whole + ("" if not fresh or whole.endswith("\n") else end) + "".join(fresh)


def _stored(query: Mapping[str, Any]) -> Table:
    """Return what the file holds of a query: what people write into always, the rest where there is something."""
    told = {name: value for name, value in query.items() if name != "acceptance" and value not in (None, "", [], False)}
    first = {name: query[name] if query[name] is not None else "" for name in _FIRST}
    return first | {name: value for name, value in told.items() if name not in first}


def _block(query: Table) -> str:
    lines = (f"{assignment(name, value)}\n" for name, value in query.items())
    return "\n[[query]]\n" + "".join(lines)


# -- reading


def _whole(text: str) -> None:
    """Raise SheetFault, with the line, for a text that is no TOML."""
    try:
        tomllib.loads(text)
    except (tomllib.TOMLDecodeError, RecursionError) as fault:
        found = _AT_LINE.search(str(fault))
        what = str(fault)[: found.start()] if found else str(fault)
        line = int(found[1]) if found else text.count("\n") + 1
        raise SheetFault(line, f"not TOML: {what[:1].lower()}{what[1:]}", "Correct it there.") from None


def _parts(text: str) -> list[str]:
    """Cut a file into what stands before the first query and the queries, which make the text when joined.

    A heading inside a text in quotes, or in a comment, begins no query.
    """
    cuts = [found.start() for found in _HEADING_OR_TEXT.finditer(text) if found["heading"] is not None]
    return [text[begin:end] for begin, end in pairwise([0, *cuts, len(text)])]


def _content(parts: Sequence[str]) -> Table:
    """Return the content of all parts as JSON values."""
    head, *queries = [_loaded(part) for part in parts]
    for index, each in enumerate(queries, 1):
        if list(each) != ["query"]:
            other = next((name for name in each if name != "query"), "query")
            raise SheetFault(_begin(parts, index), f"{other}: this stands in no query", "Write only queries here.")
    if "query" in head:
        raise SheetFault(1, "query: the queries do not stand one by one", "Begin each with a line [[query]].")
    read = [each["query"][0] for each in queries]
    return head | {"queries": [{**each, "decision": each.get("decision") or None} for each in read]}


def _loaded(part: str) -> Table:
    """Return what a part holds; nothing where it cannot be read alone."""
    try:
        return tomllib.loads(part)
    except tomllib.TOMLDecodeError:
        return {}


def _begin(parts: Sequence[str], index: int) -> int:
    return sum(part.count("\n") for part in parts[:index]) + 1


def _line(parts: Sequence[str], steps: Sequence[str]) -> int:
    """Return the line of the key that a pointer leads to; that of the query's heading where no line begins with it."""
    inside = steps[0] == "queries" and len(steps) > 2
    index = int(steps[1]) + 1 if inside else 0
    found = _assignment(parts[index], steps[2] if inside else steps[0])
    return _begin(parts, index) + (parts[index].count("\n", 0, found[0]) if found else 0)


def _assignment(part: str, key: str) -> tuple[int, int, int] | None:
    """Return where the line begins that gives a key its value, where a comment begins there, and where the line ends.

    What stands in quotes is passed over, so that no text of a person's looks like a key.
    """
    hidden = _HEADING_OR_TEXT.sub(_hidden, part)
    found = re.search(
        rf"^[ \t]*{re.escape(key)}[ \t]*=(?:[ \t]*\[[^\]]*\]|[^\r\n#]*?)(?P<comment>[ \t]*(?:#[^\r\n]*)?)(?=\r?$)",
        hidden,
        re.M,
    )
    return (found.start(), found.start("comment"), found.end()) if found else None


def _hidden(found: re.Match[str]) -> str:
    """Return as many signs that mean nothing as stand in quotes or behind the sign of a comment."""
    text = found.group()
    if found["heading"] is not None:
        return text
    return ("#" if text.startswith("#") else "_") + "_" * (len(text) - 1)


# -- writing again


def _patched(part: str, wanted: Table) -> str:
    """Return a part with the values wanted; lines whose value holds stay as they are."""
    has = _values(part)
    if _same(has, wanted):
        return part
    better = part
    for key in dict.fromkeys((*has, *wanted)):
        if has.get(key) != wanted.get(key) and not (key not in has and wanted[key] == ""):
            better = _put(better, key, wanted.get(key))
    return better if _same(_values(better), wanted) else _anew(part, wanted)


def _values(part: str) -> Table:
    """Return the keys and values of the head or of one query; none where the part cannot be read."""
    table = _loaded(part)
    values: Table = table["query"][0] if "query" in table else table
    return values


def _same(has: Table, wanted: Table) -> bool:
    """Tell whether two tables hold the same, where what is empty counts as not there."""
    filled = [{key: value for key, value in each.items() if value not in ("", [], False)} for each in (has, wanted)]
    return filled[0] == filled[1]


def _put(part: str, key: str, value: Any) -> str:
    """Put a value into the line of its key, before the comment there; a key without a line gets one."""
    found = _assignment(part, key)
    if found is not None:
        begin, comment, end = found
        if value is None:
            return part[:begin] + part[end:].removeprefix("\r").removeprefix("\n")
        return part[:begin] + assignment(key, value) + part[comment:end] + part[end:]
    return part if value is None else _added(part, assignment(key, value))


def _added(part: str, line: str) -> str:
    """Put a line behind the heading of a query, or at the end of what stands before the first one."""
    end = "\r\n" if "\r\n" in part else "\n"
    heading = _HEADING.search(part)
    at = part.find("\n", heading.start()) + 1 if heading else len(part)
    before, behind = (part[:at], part[at:]) if at else (part, "")
    return before + ("" if before.endswith("\n") or not before else end) + line + end + behind


def _anew(part: str, wanted: Table) -> str:
    """Write a part whose lines cannot be told apart; its comments stand before its keys."""
    comments = [found.group().rstrip() for found in _HEADING_OR_TEXT.finditer(part) if found.group().startswith("#")]
    heading = ["[[query]]"] if _HEADING.search(part) else []
    lines = [*heading, *comments, *(assignment(key, value) for key, value in wanted.items())]
    end = "\r\n" if "\r\n" in part else "\n"
    return "".join(f"{line}{end}" for line in "\n".join(lines).split("\n"))
