"""What is printed beside the stitches: counts after a row, and notes in brackets with nothing to work."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from counterpane.craft.rows.colours import is_yarn_code
from counterpane.craft.rows.cursor import STITCH_WORDS, Cursor
from counterpane.craft.rows.tree import Place
from counterpane.craft.rows.words import Token

# House bounds, in words.
LONGEST_ASIDE = 14
_LONGEST_END = 20
_CHANGES = frozenset(
    "inc incs inc'd increased increase increases dec decs dec'd decreased decrease decreases bound cast off made more "
    "fewer less".split()
)
_CHANGED = frozenset("inc inc'd increased dec dec'd decreased".split())
_COUNT_WORDS = STITCH_WORDS | frozenset(
    "you will should there be are is have has now total a of in all rem remain remaining remains left on needle "
    "needles pin pins each the that makes making giving leaving gives leaves and when".split()
)
# "…, and must begin with the first row again" behind a count tells of rows and counts nothing.
_AGAIN = frozenset("begin commence repeat recommence again must first 1st row round pattern with from at then".split())
_MOST_NUMBERS = 3  # House.
_SHORT_NOTE = 3  # House.
LEADS = frozenset("you there total now giving leaving making leaves makes gives".split())
_EDGES = frozenset("edge selvedge selvage border marked centre center balancing end".split())
_FABRICS = frozenset(
    "garter rib ribbed ribbing moss seed stocking stockinette band button buttonhole neck front".split()
)
# In which yarn an edge is worked: "(edge st of A)", "(edge sts in colour B)".
_YARN_WORDS = frozenset("of in with the yarn colour color".split())
_SIDES = frozenset("rs ws right wrong side facing".split())
_POINTERS = frozenset({"see", "note", "optional"})
_ROWS = frozenset("row rnd round".split())


@dataclass(frozen=True, slots=True)
class Aside:
    """A printed count, None for a note; `length` tokens are moved past."""

    count: int | None
    place: Place
    length: int


def aside_at(cursor: Cursor) -> Aside | None:
    """Return the count or note that stands here, in brackets or at the end of the row; None where none does."""
    return _in_brackets(cursor) if cursor.token.kind == "open" else _at_end(cursor)


def _in_brackets(cursor: Cursor) -> Aside | None:
    """Read "(17 sts)", "[2 sts dec'd: 17 sts]", "(17)" at the end, "(edge st)", "(RS)", "(eyelet row)"."""
    begin = cursor.at + 1
    ahead = next((n for n in range(1, LONGEST_ASIDE + 1) if _kind(cursor, n) in ("close", "open", "star")), None)
    if ahead is None or _kind(cursor, ahead) != "close":
        return None
    inside = cursor.run[begin : cursor.at + ahead]
    counted = _count(inside)
    if counted is None and len(inside) == 1 and inside[0].value is not None and _ends(cursor, ahead + 1):
        counted = inside[0]
    if counted is not None:
        return Aside(counted.value, counted.place, ahead + 1)
    return Aside(None, inside[0].place, ahead + 1) if inside and _is_note(inside) else None


def _at_end(cursor: Cursor) -> Aside | None:
    """Read "17 sts.", "2 sts inc'd; 17 sts", "you should have 17 sts", "2 sts decreased" with but a stop behind it."""
    end, numbers = cursor.at, 0
    while end < len(cursor.run) and cursor.run[end].norm != ".":
        token = cursor.run[end]
        if token.norm == ";" and _count(cursor.run[cursor.at : end]):
            break
        numbers += token.value is not None
        if not _may_count(token) or numbers > _MOST_NUMBERS or end - cursor.at > _LONGEST_END:
            return None
        end += 1
    said = cursor.run[cursor.at : end]
    if counted := _count(said):
        return Aside(counted.value, counted.place, len(said))
    behind_sign = cursor.at > 0 and cursor.run[cursor.at - 1].kind == "pause"
    return Aside(None, said[0].place, len(said)) if behind_sign and _tells_change(said) else None


def _tells_change(said: Sequence[Token]) -> bool:
    """Tell whether words only tell by how much the count has changed: "2 sts decreased"."""
    words = {token.norm for token in said[1:]}
    return (
        bool(said)
        and said[0].value is not None
        and bool(words & STITCH_WORDS)
        and bool(words & _CHANGED)
        and (words <= STITCH_WORDS | _CHANGED)
    )


def _may_count(token: Token) -> bool:
    """Tell whether a word may stand in a printed count."""
    known = token.norm in _COUNT_WORDS or token.norm in _CHANGES or token.norm in _AGAIN
    return known or token.value is not None or token.kind == "pause"


def _count(inside: Sequence[Token]) -> Token | None:
    """Return the number of a printed count, where the words are about nothing else."""
    found: Token | None = None
    for part in _parts(inside):
        if not {"begin", "commence", "repeat"}.isdisjoint(token.norm for token in part):
            continue
        if not all(token.value is not None or token.norm in _COUNT_WORDS or token.norm in _CHANGES for token in part):
            return None
        number = next((token for token in part if token.value is not None), None)
        if any(token.norm in _CHANGES for token in part):
            continue
        if number is None or found is not None or not any(token.norm in STITCH_WORDS for token in part):
            return None
        found = number
    return found


def _is_note(inside: Sequence[Token]) -> bool:
    """Tell whether words in brackets tell nothing to work."""
    words = {token.norm for token in inside}
    if inside[0].norm in _POINTERS or _is_signed(inside) or _is_colour(inside):
        return True
    stitches = words & STITCH_WORDS
    named = {word for word in words if not word.isdigit()} - STITCH_WORDS
    if not named.isdisjoint(_EDGES):
        named = {word for word in named if word not in _YARN_WORDS and not is_yarn_code(word)}
    # "(2 sts cast off)" tells what has been done; "(cast off 2 sts)" is to be worked.
    done = named <= _CHANGES and inside[0].value is not None
    edge = named <= _EDGES | _FABRICS and not named.isdisjoint(_EDGES | {"band"})
    if named and (edge or (stitches and done)):
        return True
    return bool(words) and (words <= _SIDES | _ROWS or (inside[-1].norm in _ROWS and len(inside) <= _SHORT_NOTE))


def _is_signed(inside: Sequence[Token]) -> bool:
    """Tell "+2 sts" behind a row, which says by how much its count has changed."""
    if len(inside) < 2 or inside[0].norm not in ("+", "-"):
        return False
    return inside[1].value is not None and all(token.norm in STITCH_WORDS for token in inside[2:])


def _is_colour(inside: Sequence[Token]) -> bool:
    """Tell the yarn of a row or stitch in brackets: "(B)", "(MC)"."""
    return len(inside) == 1 and is_yarn_code(inside[0].norm)


def _parts(inside: Sequence[Token]) -> list[list[Token]]:
    """Cut words at their signs."""
    out: list[list[Token]] = [[]]
    for token in inside:
        if token.kind == "pause":
            out.append([])
        else:
            out[-1].append(token)
    return [part for part in out if part]


def _kind(cursor: Cursor, ahead: int) -> str:
    index = cursor.at + ahead
    return cursor.run[index].kind if index < len(cursor.run) else ""


def _ends(cursor: Cursor, ahead: int) -> bool:
    """Tell whether the row ends here."""
    return all(token.norm in (".", ";") for token in cursor.run[cursor.at + ahead : cursor.at + ahead + 2])
