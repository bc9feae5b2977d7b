"""Rows put into working order as they are read, section by section, and found again by their labels."""

from __future__ import annotations

from dataclasses import replace

from counterpane.craft.rows.again import Again
from counterpane.craft.rows.blocks import Wanted, in_order
from counterpane.craft.rows.labels import Label
from counterpane.craft.rows.mistakes import Fault
from counterpane.craft.rows.statements import StatedCount
from counterpane.craft.rows.steps import AgainStep, Step
from counterpane.craft.rows.tree import Place, Row

MOST_ROWS = 2_500
"""Rows of a text beyond which none is read; house figure that bounds time. A blanket for a bed has some 800."""
MOST_OF_SIZES = 6_000
"""The same for the rows of all sizes of a text together."""


class Listing:
    """The steps so far, the block of rows that is not in order yet, and the rows that a label names."""

    def __init__(self, sizes: int = 1) -> None:
        self.most = min(MOST_ROWS, MOST_OF_SIZES // sizes)
        self.steps: list[Step] = []
        self.faults: list[Fault] = []
        self.section: str | None = None
        self._block: list[Row] = []
        self._wanted: list[Wanted] = []
        self._labels: set[str] = set()
        self._known: dict[str, Row] = {}
        self._latest: dict[str, int] = {}
        self._part: str | None = None
        self._in_section: dict[tuple[str, str], int] = {}
        self._listed = self._first = 0

    @property
    def empty(self) -> bool:
        """Whether nothing is listed yet."""
        return not (self.steps or self._block)

    @property
    def full(self) -> bool:
        """Whether no more rows are taken."""
        return len(self.steps) + len(self._block) >= self.most

    def recent(self, many: int) -> tuple[Row, ...]:
        """Return the rows read last, in the order printed; fewer where there are not so many."""
        listed = [step for step in self.steps[-2 * many - len(self._block) :] if isinstance(step, Row)]
        return (*listed, *self._block)[-many:]

    def named(self, label: str) -> Row | None:
        """Return the latest row of a label."""
        return self._known.get(label)

    # -- building

    def begin_section(self, name: str | None) -> None:
        """Put what was read into order, and list what follows under a name."""
        self.end_block(None)
        self._first = self._listed
        self.section = name

    def begin_rows(self, label: Label) -> None:
        """Put what was read into order where a label comes a second time, or names another part."""
        again = any(str(number) in self._labels for number in label.numbers)
        if again or (label.part and label.part != self._part):
            self.end_block(None)
            self._part = label.part

    def add(self, row: Row) -> None:
        """Add a row to the block, unless the text has too many."""
        if self.full:
            self.refuse(row.place, row.label)
            return
        self._block.append(row)
        self._labels.add(row.label)
        self._known[row.label] = row

    def refuse(self, place: Place, label: str) -> None:
        """Note that a row is one too many, once for rows in a run."""
        if not any(fault.rule == "too-many-rows" for fault in self.faults[-1:]):
            self.faults.append(Fault("too-many-rows", place, label))

    def want(self, label: Label, row: Row) -> None:
        """Note a label that stands for further rows of the block."""
        self._wanted.append(Wanted(label, row, len(self._block)))

    def step(self, step: Step) -> None:
        """Add a step that is no row."""
        self.end_block(None)
        if len(self.steps) < self.most:
            self.steps.append(step)

    def end_block(self, again: Again | None) -> None:
        """Put the rows of a block into working order: by number, with those that a label stands for."""
        block = in_order(self._block, self._wanted, max(again.numbers) if again and again.numbers else None)
        for row in block[: self.most - len(self.steps)]:
            self._known[row.label] = row
            self._latest[row.label] = self._listed
            for part in (self.section, self._part):
                if part:
                    self._in_section[part.lower(), row.label] = self._listed
            self._listed += 1
            self.steps.append(row)
        self._block, self._labels, self._wanted, self._part = [], set(), [], None

    def state(self, stated: StatedCount) -> None:
        """Take a count that is printed by itself for that of the row or repeat line before it."""
        if self._block:
            self._block[-1] = _stating(self._block[-1], stated)
        elif self.steps and isinstance(self.steps[-1], Row):
            self.steps[-1] = _stating(self.steps[-1], stated)
        elif self.steps and isinstance(step := self.steps[-1], AgainStep) and step.again.stated is None:
            again = replace(step.again, stated=stated.count, stated_place=stated.place)
            self.steps[-1] = replace(step, again=again)

    # -- repeat lines

    def again(self, again: Again) -> None:
        """Add a repeat line after the rows of its section."""
        self.end_block(again)
        labels = _labels(again)
        missing = [label for label in labels if label not in self._latest]
        if missing and not again.loose:
            self.faults.append(Fault("unknown-row", again.place, missing[0]))
        rows = self._targets(again, labels)
        if rows:
            self.step(AgainStep(again, rows))

    def _targets(self, again: Again, labels: list[str]) -> tuple[int, ...]:
        """Return the indices of the listed rows that a repeat line means: the latest of each label."""
        if labels:
            found = (self._index(label, again.part) for label in labels)
            return tuple(index for index in found if index is not None)
        first = self._first if again.last == 0 else max(0, self._listed - again.last)
        if again.since is not None:
            first = self._latest.get(str(again.since), self._first)
        end = self._listed if again.upto is None else self._latest.get(str(again.upto), self._listed - 1) + 1
        if again.head:
            end = min(self._listed, first + again.head)
        return tuple(range(first, end))

    def _index(self, label: str, part: str | None) -> int | None:
        """Return the latest row of a label, in the section that a repeat line names where there is one."""
        if part:
            for section, name in reversed(self._in_section):
                if name == label and (part in section or section in part):
                    return self._in_section[section, name]
        return self._latest.get(label)


def _labels(again: Again) -> list[str]:
    return list(dict.fromkeys((*(str(number) for number in again.numbers), *again.letters)))


def _stating(row: Row, stated: StatedCount) -> Row:
    return row if row.stated is not None else replace(row, stated=stated.count, stated_place=stated.place)
