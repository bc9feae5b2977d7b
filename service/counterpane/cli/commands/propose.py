"""`counterpane propose`: complete recipes for a gauge, a size, the yarn at hand, skills, and what is to be avoided."""

from __future__ import annotations

import argparse
import re
from collections.abc import Callable
from decimal import Decimal
from typing import Any

from counterpane.cli import endings, output
from counterpane.cli.configuring import library_or_starters
from counterpane.cli.options import amount, slug, take_json, take_store
from counterpane_schema.choices import AVOIDED, DIFFICULTIES, MOST_PROPOSED, SKILLS, USES

NAME = "propose"
ABOUT = """Propose complete recipes for a gauge and a size, ranked with reasons, no two of one body.

Each is planned and proved, and --take gives its request for `counterpane plan`. None is recommended as safe. What is
not known of a part is no reason to take it: where openings are to be avoided, one of unknown openings is passed over.
The exit status is 1 where nothing can be proposed."""
EXAMPLES = """examples:
  $ counterpane propose --gauge 22x30 --size 70x90
  $ counterpane propose --gauge 22x30 --size pram --level easy --avoid openings,fringe,one-sided
  $ counterpane propose --gauge 22x30 --size 70x90 --ball-g 50 --ball-m 115 --balls 8 --skills knit-and-purl,cables
  $ counterpane propose --gauge 22x30 --size 70x90 --take 1 | counterpane plan -"""
UNITS = ("grams", "metres", "balls")
_PAIR = re.compile(r"([0-9]{1,4}(?:[.][0-9]{1,3})?)x([0-9]{1,4}(?:[.][0-9]{1,3})?)", re.ASCII)
_MONTHS = re.compile(r"[0-9]{1,3}([.][.][0-9]{1,3})?", re.ASCII)


def declare(parser: argparse.ArgumentParser) -> None:
    """Add the options."""
    add = parser.add_argument
    add("--gauge", required=True, type=_pair, metavar="STxROWS", help="stitches and rows to 10 cm")
    add(
        "--size",
        required=True,
        type=_size,
        metavar="WxL",
        help="width by length in cm, or a name of `counterpane sizes`",
    )
    add("--level", choices=DIFFICULTIES, help="the most demanding level that is wanted")
    add(
        "--skills", type=_words(SKILLS), metavar="SKILL,SKILL", help=f"all that the knitter can do: {', '.join(SKILLS)}"
    )
    add("--avoid", type=_words(AVOIDED), metavar="WHAT,WHAT", help=f"what is not wanted: {', '.join(AVOIDED)}")
    _take_yarn(parser)
    add("--months", type=_months, metavar="N..N", help="the age of the child in months")
    add("--use", choices=USES, help="what the blanket is for")
    add(
        "--market",
        action="append",
        metavar="CODE",
        help="where it is sold or given, such as UK; several if typed again",
    )
    add("--limit", type=int, choices=range(1, MOST_PROPOSED + 1), metavar="N", default=6, help="proposals at most (6)")
    add(
        "--take",
        type=int,
        choices=range(1, MOST_PROPOSED + 1),
        metavar="N",
        help="write the request of this proposal alone",
    )
    take_store(parser, "else the parts that ship with the program")
    take_json(parser)


def _take_yarn(parser: argparse.ArgumentParser) -> None:
    add = parser.add_argument
    add("--weight", metavar="NAME", help="the class of the yarn at hand in words, such as “double knitting”")
    add("--ball-g", type=amount, metavar="G", help="grams of one ball")
    add("--ball-m", type=amount, metavar="M", help="metres of one ball")
    add("--fibre", action="append", metavar="NAME", help="a fibre of the yarn, such as wool; several if typed again")
    for unit in UNITS:
        add(f"--{unit}", type=amount, metavar="N", help=f"how much of it is at hand, in {unit}")


def _pair(text: str) -> tuple[Decimal, Decimal]:
    found = _PAIR.fullmatch(text.strip().lower())
    if not found or not Decimal(found[1]) or not Decimal(found[2]):
        raise argparse.ArgumentTypeError(f"{text[:40]!r} is not two numbers above 0 with an x between them: 22x30")
    return Decimal(found[1]), Decimal(found[2])


def _size(text: str) -> dict[str, Any]:
    if text[:1].isdigit():
        width, length = _pair(text)
        return {"width_cm": width, "length_cm": length}
    return {"named": slug(text)}


def _words(known: tuple[str, ...]) -> Callable[[str], list[str]]:
    def words(text: str) -> list[str]:
        found = [word.strip() for word in text.split(",") if word.strip()]
        if strange := [word for word in found if word not in known]:
            raise argparse.ArgumentTypeError(f"{strange[0][:40]!r} is none of {', '.join(known)}")
        return list(dict.fromkeys(found))

    return words


def _months(text: str) -> list[int]:
    if not _MONTHS.fullmatch(text.strip()):
        raise argparse.ArgumentTypeError(f"{text[:40]!r} is no age in months, such as 3 or 0..12")
    return sorted(int(each) for each in text.strip().split(".."))


def run(options: argparse.Namespace) -> int:
    """Propose, and show what is proposed, or one request alone."""
    with output.waiting("planning proposals"):
        answer = _proposed(options)
    found = answer["proposals"]
    if options.take and len(found) < options.take:
        raise endings.Missing(f"there are only {len(found)} proposals", "Take another number, or avoid less.")
    if options.take:
        output.put_json(found[options.take - 1]["request"])
    elif options.json:
        output.put_json(answer)
    else:
        from counterpane.cli.showing import proposals

        with output.page() as console:
            proposals.draw(console, answer)
    return endings.DONE if found else endings.FOUND


def _proposed(options: argparse.Namespace) -> dict[str, Any]:
    from counterpane.library.proposing.proposals import propose

    with library_or_starters(options.store) as services:
        return propose(services, request_of(options))


def request_of(options: argparse.Namespace) -> dict[str, Any]:
    """Return what was typed as the request that the API takes."""
    stitches, rows = options.gauge
    given = {
        "gauge": {"stitches": stitches, "rows": rows, "over_cm": 10},
        "size": options.size,
        "yarn": _yarn(options),
        "have": next(({unit: value} for unit in UNITS if (value := getattr(options, unit)) is not None), None),
        "for": _for(options),
        "level": options.level,
        "skills": options.skills,
        "avoid": options.avoid,
        "limit": max(options.limit, options.take or 0),
    }
    return {name: value for name, value in given.items() if value is not None}


def _yarn(options: argparse.Namespace) -> dict[str, Any] | None:
    told = {name: getattr(options, name) for name in ("weight", "ball_g", "ball_m")}
    fibres = [{"fibre": name, "percent": None} for name in options.fibre or ()]
    given = {name: value for name, value in told.items() if value is not None}
    given |= {"fibre": fibres} if fibres else {}
    return given or None


def _for(options: argparse.Namespace) -> dict[str, Any] | None:
    told = {"age_months": options.months, "use": options.use, "markets": options.market}
    return {name: value for name, value in told.items() if value is not None} or None
