"""The fibre label of a piece: what counts in the percentages, part by part, and the words of each market."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping, Sequence
from dataclasses import dataclass, field
from fractions import Fraction

from counterpane.craft.care.composition import Composition, composition, places_for, rounded
from counterpane.craft.care.fibres import Fibre
from counterpane.craft.care.groups import CareLine, care_label
from counterpane.craft.care.law import Law
from counterpane.craft.care.yarns import Share, Yarn

LEAVING_OUT = ("EU", "NL", "UK")
"""Markets of Regulation (EU) No 1007/2011, whose Article 10 lets decoration out, and of the British law after it."""


@dataclass(frozen=True, slots=True)
class Piece:
    """A finished piece as it is told of.

    `dry` says that percentages and grams are those of clean dry mass. `places` is the decimals of a label. `claims` are
    words such as "pure" that somebody wants to print, `stated` the fields of a label that are told, by name. `washed`
    holds how the piece is going to be washed, by group of care, where that is told.
    """

    yarns: tuple[Yarn, ...]
    dry: bool = False
    places: int = 0
    markets: tuple[str, ...] = ()
    claims: tuple[str, ...] = ()
    stated: Mapping[str, str] = field(default_factory=dict)
    washed: Mapping[str, str] = field(default_factory=dict)


@dataclass(frozen=True, slots=True)
class PartLabel:
    """The fibres of the whole piece (no name) or of a part, and the per cent of the piece's mass that the part is.

    `virgin` says whether its wool may be called virgin wool; None where that is asked for and not known.
    """

    name: str | None
    made_of: Composition
    percent: Fraction | None
    virgin: bool | None


@dataclass(frozen=True, slots=True)
class Labelled:
    """A piece with what follows for its labels.

    `whole` and `parts`, which are there where they differ, are without what may be left out of the percentages;
    `everything` is with it, part by part. `left_out` is what is to be left out in per cent of mass, by why; None is not
    known. `care` is the care of the whole.
    """

    piece: Piece
    law: Law
    whole: PartLabel
    parts: tuple[PartLabel, ...]
    everything: tuple[PartLabel, ...]
    left_out: Mapping[str, Fraction | None]
    care: tuple[CareLine, ...]

    def of(self, market: str) -> tuple[PartLabel, ...]:
        """Return what a market's label tells of: the parts, or the whole; only some markets let fibres be left out."""
        return (self.parts or (self.whole,)) if market in LEAVING_OUT else self.everything


def labelled(piece: Piece, law: Law) -> Labelled:
    """Work out the fibre label of a piece."""
    left_out = {why: _share([y for y in piece.yarns if y.left_out == why], piece.yarns) for why in law.left_out_most}
    counted = tuple(yarn for yarn in piece.yarns if not _may_go(yarn, left_out, law)) or piece.yarns
    whole = _part(None, counted, piece, law)
    parts = tuple(_parts(counted, piece, law))
    everything = tuple(_parts(piece.yarns, piece, law)) or (_part(None, piece.yarns, piece, law),)
    return Labelled(piece, law, whole, parts, everything, left_out, care_label(piece.yarns, law.groups))


def _share(some: Sequence[Yarn], yarns: Iterable[Yarn]) -> Fraction | None:
    """Return the per cent of mass that some of the yarns are, None where a mass that it needs is not known."""
    if not some:
        return Fraction(0)
    grams = [yarn.grams for yarn in yarns]
    if None in grams:
        return None
    total = sum((gram for gram in grams if gram), Fraction(0))
    return 100 * sum((yarn.grams for yarn in some if yarn.grams), Fraction(0)) / total


def _may_go(yarn: Yarn, left_out: Mapping[str, Fraction | None], law: Law) -> bool:
    share = left_out.get(yarn.left_out or "")
    return yarn.left_out is not None and share is not None and share <= law.left_out_most[yarn.left_out]


def _parts(yarns: Sequence[Yarn], piece: Piece, law: Law) -> Iterator[PartLabel]:
    """Give the label of each part where every yarn has its part and the parts differ in fibre."""
    names = dict.fromkeys(yarn.part for yarn in yarns)
    if None in names or len(names) == 1:
        return
    parts = [_part(name, [yarn for yarn in yarns if yarn.part == name], piece, law) for name in names]
    if len({part.made_of.figures for part in parts}) > 1 or not all(part.made_of.known for part in parts):
        yield from parts


def _part(name: str | None, yarns: Sequence[Yarn], piece: Piece, law: Law) -> PartLabel:
    made_of = composition(yarns, dry=piece.dry)
    return PartLabel(name, made_of, _share(yarns, yarns if name is None else piece.yarns), _virgin(yarns, made_of, law))


def _virgin(yarns: Sequence[Yarn], made_of: Composition, law: Law) -> bool | None:
    """Tell whether the wool may be called virgin wool: Regulation (EU) No 1007/2011, Article 8.

    All of it must be such and be enough of a blend. Wool blended within one yarn with two fibres or more must not be
    blended in scribbling, which nobody told: not known.
    """
    wool = [share for yarn in yarns for share in yarn.fibres or () if share.reading.fibre == law.fibres.of("wool")]
    if not any(share.reading.virgin for share in wool):
        return False
    shares = {portion.fibre.name: portion.least for portion in made_of.portions}
    enough = len(shares) == 1 or shares.get("wool", Fraction(0)) >= law.virgin_least
    if not made_of.known or not enough or not all(share.reading.virgin for share in wool):
        return False
    blended = any(len(yarn.named) > 2 and law.fibres.of("wool") in yarn.named for yarn in yarns)
    return None if blended else True


@dataclass(frozen=True, slots=True)
class Line:
    """One fibre of a label: None for the fibres that are not named. Per cent as shown, and exact."""

    fibre: Fibre | None
    percent: Fraction
    exact: Fraction


def lines(part: PartLabel, law: Law, market: str, places: int) -> tuple[Line, ...]:
    """Return the fibres of a part for a market, the largest first; those that it does not name are one line, the last.

    The percentages make 100. Of use where the composition is known.
    """
    percents = part.made_of.percents
    shown = rounded(percents, places_for(percents, places))
    found = [Line(each.fibre, show, each.least) for each, show in zip(part.made_of.portions, shown, strict=True)]
    least = law.named_from.get(market, Fraction(0))
    always = law.always_named if market == "US" else ()
    named = [line for line in found if line.exact >= least or (line.fibre and line.fibre.name in always)]
    others = [line for line in found if line not in named]
    if others:
        rest = (sum((getattr(line, of) for line in others), Fraction(0)) for of in ("percent", "exact"))
        named.append(Line(None, *rest))
    return tuple(named)


def shares(label: Labelled) -> Iterator[tuple[str, Yarn, Share]]:
    """Give each fibre of each yarn with its JSON pointer into the request."""
    for place, yarn in enumerate(label.piece.yarns):
        for number, share in enumerate(yarn.fibres or ()):
            yield f"/yarns/{place}/fibre/{number}", yarn, share
