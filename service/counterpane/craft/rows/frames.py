"""An open bracket or star of a row, with what has been read inside and where its clauses begin."""

from __future__ import annotations

from dataclasses import dataclass, field

from counterpane.craft.rows.tree import Node, OpenRepeat, Place
from counterpane.craft.rows.units import last_units, unit_start, with_over
from counterpane.craft.rows.words import Token

CLOSES = {"(": ")", "[": "]", "{": "}"}


@dataclass(slots=True)
class Frame:
    """An open bracket or star, or the row itself (opener ""), with what has been read inside.

    `bare` says that the last item is a stitch without a number, `pair` where two stitches were slipped as one, `pairs`
    where a pair of stars stood without a stop. `clause` is where the clause under way began, `earlier` the one before
    it, `cut` whether a semicolon or a full stop has cut the list into clauses. `alternate` is where "alternately" stood
    before the two units that it joins, how often, and the word itself; `going` where that began which is to go on.
    `anded` is how many items stood before the last "and", `told` which one is a yarn-over in the words of a handbook,
    `edge` how many edge stitches stand before the list that "repeat" repeats, `placed` how many items stood when one
    with a stitch of its own ("in the next stitch") had been read.
    """

    opener: str
    place: Place
    items: list[Node] = field(default_factory=list)
    bare: bool = False
    pair: int | None = None
    pairs: dict[str, int] = field(default_factory=dict)
    clause: int = 0
    earlier: int = 0
    cut: bool = False
    alternate: tuple[int, int | None, Token] | None = None
    going: int | None = None
    anded: int | None = None
    told: int | None = None
    edge: int = 0
    placed: int = 0

    @property
    def is_star(self) -> bool:
        """Whether a star opened it."""
        return self.opener not in ("", *CLOSES)

    def pause(self) -> None:
        """End the clause under way, if anything stands in it."""
        if self.clause < len(self.items):
            self.earlier, self.clause, self.cut = self.clause, len(self.items), True

    def since_repeat(self) -> int:
        """Return where the list behind the last open repeat begins."""
        items = self.items
        return next((i + 1 for i in range(len(items) - 1, -1, -1) if isinstance(items[i], OpenRepeat)), self.edge)

    def counted(self) -> tuple[int, bool]:
        """Return where the stitches before ", 3 times" begin, and whether that is doubtful.

        The clause where semicolons cut the list or where it has no more than two units; else the last unit with its
        yarn-over, which is doubtful where it has none.
        """
        items = self.items
        start = self.clause if self.clause < len(items) else self.earlier
        last = unit_start(items, len(items))
        if self.cut or last_units(items, 2) <= start:
            return min(start, last), False
        return with_over(items, last), with_over(items, last) == last
