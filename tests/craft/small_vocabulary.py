"""A small vocabulary for trees built by hand: the stitches whose counts the tests are about."""

from __future__ import annotations

from counterpane.craft.stitches import Face, Stitch, Vocabulary

_PLAIN: tuple[tuple[str, int, int, Face | None], ...] = (
    ("k", 1, 1, "knit"),
    ("p", 1, 1, "purl"),
    ("k tbl", 1, 1, "knit"),
    ("p tbl", 1, 1, "purl"),
    ("patt", 1, 1, None),
    ("kfb", 1, 2, "knit"),
    ("p2tog", 2, 1, "purl"),
    ("k2tog tbl", 2, 1, "knit"),
)


def _stitch(key: str, uses: int, makes: int, face: Face | None = None, **more: object) -> Stitch:
    return Stitch(key, uses, makes, {"us": (key,)}, {"us": key}, face, **more)  # type: ignore[arg-type]


VOCABULARY = Vocabulary.of(
    (
        *(_stitch(*plain) for plain in _PLAIN if plain[0] not in {"k", "p", "p2tog", "k tbl", "p tbl"}),
        _stitch("k", 1, 1, "knit", back="p"),
        _stitch("p", 1, 1, "purl", back="k"),
        _stitch("k tbl", 1, 1, "knit", back="p tbl"),
        _stitch("p tbl", 1, 1, "purl", back="k tbl"),
        _stitch("sl", 1, 1, None),
        _stitch("k2tog", 2, 1, "knit", lean="right", back="p2tog", mirror="ssk"),
        _stitch("p2tog", 2, 1, "purl", lean="right", back="k2tog", mirror="ssp"),
        _stitch("ssk", 2, 1, "knit", lean="left", back="ssp", mirror="k2tog"),
        _stitch("ssp", 2, 1, "purl", lean="left", back="ssk", mirror="p2tog"),
        _stitch("k3tog", 3, 1, "knit", lean="right"),
        _stitch("yo", 0, 1, None, opens=True),
        _stitch("m1", 0, 1, "knit"),
        _stitch("m1l", 0, 1, "knit", lean="left", mirror="m1r"),
        _stitch("m1r", 0, 1, "knit", lean="right", mirror="m1l"),
        _stitch("psso", 0, -1, None, needs=2),
        _stitch("c4f", 4, 4, "knit", lean="left", mirror="c4b"),
        _stitch("c4b", 4, 4, "knit", lean="right", mirror="c4f"),
        _stitch("wyif", 0, 0),
    )
)
