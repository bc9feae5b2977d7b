"""The tree of a written row: frozen nodes, each with the place where it stands.

Places do not take part in equality, so that a row read from other words equals the row it repeats.
What a stitch uses and makes is not known here: a `Work` names a key of the vocabulary.
"""

from __future__ import annotations

from dataclasses import field
from typing import Literal, NamedTuple, TypeAlias

from counterpane.craft.records import record

Side: TypeAlias = Literal["RS", "WS", "round"]


class Place(NamedTuple):
    """Line and column of the text as given, from 1, in code points.

    A tuple, as a token is: every node of every row has one, and a tuple is made in half the time.
    """

    line: int
    column: int


NOWHERE = Place(0, 0)


def _place() -> Place:
    return field(default=NOWHERE, compare=False)


@record
class Work:
    """Work `times` times the stitch of this key: k3, k2tog, yo twice, sl 1.

    `manner` holds any of "kwise", "pwise", "wyif", "wyib", in this order; `colour` a colour named after the stitch;
    `held` says that the stitches come from the cable needle and so use none of the left needle; `evenly` that they are
    increases or decreases spread over what is worked across before them, which stops short of what they take.
    """

    stitch: str
    times: int = 1
    manner: tuple[str, ...] = ()
    colour: str | None = None
    held: bool = False
    place: Place = _place()
    evenly: bool = False


@record
class Group:
    """Work the parts `times` times: [k1, p1] 3 times.

    `doubtful` marks a star with a plain "n times", read as n + 1: it may also be `times - 1`.
    """

    parts: tuple[Node, ...]
    times: int
    doubtful: bool = False
    place: Place = _place()


@record
class IntoOne:
    """Work all parts into one stitch: (k1, yo, k1) into next st; `loops` 2 is "into next double yo"."""

    parts: tuple[Node, ...]
    loops: int = 1
    place: Place = _place()


@record
class OpenRepeat:
    """Repeat the parts as often as the stitches allow.

    `stop` is the number of stitches left for the rest: 0 for "to end", None where none is printed and the rest decides.
    `marker` says that the stop counts to the next marker and not to the end of the row.
    `plain` is a single stitch worked across ("k to last 3 sts", "knit"), which may be none; any other is at least once.
    `last` replaces the parts in the last working ("ending last rep k2"); None where the last is like the others.
    """

    parts: tuple[Node, ...]
    stop: int | None = 0
    plain: bool = False
    marker: bool = False
    last: tuple[Node, ...] | None = None
    place: Place = _place()


@record
class BindOff:
    """Bind off `times` stitches within a row, or all of them where None.

    Uses times + 1 and leaves 1, which the next number does not count. `joined` is the other reading: the next number
    counts that stitch, so the bind-off itself uses `times` and leaves none.
    """

    times: int | None
    manner: str = ""
    joined: bool = False
    place: Place = _place()


@record
class CastOn:
    """Cast on `times` stitches within a row."""

    times: int
    place: Place = _place()


@record
class Hold:
    """Slip `times` stitches to a cable needle and hold it in front or at the back."""

    times: int
    where: Literal["front", "back"] = "back"
    place: Place = _place()


@record
class Marker:
    """Place, slip or remove a marker."""

    act: Literal["place", "slip", "remove"]
    place: Place = _place()


@record
class Turn:
    """Turn the work before the end of the row, having wrapped the yarn round the next stitch where `wrapped`."""

    wrapped: bool = False
    place: Place = _place()


Node: TypeAlias = Work | Group | IntoOne | OpenRepeat | BindOff | CastOn | Hold | Marker | Turn


@record
class Row:
    """One row or round as it is worked.

    `label` is digits only where there are any; `side` is as stated or worked out, else None; `stated` the count printed
    after it. `place` is where its line begins, `start` where its first word stands and
    `end` just behind its last.
    `whole` says that the row had no star and was taken as one repeat ("repeat", or a stated multiple), `old` that it is
    in the words of handbooks, which often leave "repeat" out.
    """

    label: str
    parts: tuple[Node, ...]
    side: Side | None = None
    stated: int | None = None
    section: str | None = None
    whole: bool = False
    readable: bool = True
    place: Place = _place()
    start: Place = _place()
    end: Place = _place()
    stated_place: Place = _place()
    text: str = field(default="", compare=False)
    old: bool = field(default=False, compare=False)
