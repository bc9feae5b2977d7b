"""A pattern as one HTML file that needs nothing else: for the screen, a phone, and the printer.

Rows can be ticked; where the browser runs scripts and keeps what pages give it, it keeps the ticks. No other script
and no style runs on the page: a policy in its head allows these two by their hashes.
"""

from __future__ import annotations

from base64 import b64encode
from collections.abc import Iterable, Iterator, Mapping, Sequence
from hashlib import sha256
from html import escape
from importlib.resources import files

from counterpane.craft.drawing import Picture
from counterpane.craft.pattern import Pattern
from counterpane.craft.stitches import Terms
from counterpane.press import Paper
from counterpane.press.blocks import Block, Entries, Figure, Heading, Instructions, Items, Orders, Paragraph, Table
from counterpane.press.page import page
from counterpane.press.words import ENGLISH, PageWords, in_languages

PAPERS: Mapping[Paper, str] = {"a4": "A4", "letter": "letter"}
LANGUAGES = {"us": "en-US", "uk": "en-GB"}


def as_html(pattern: Pattern, pictures: Sequence[Picture] = (), paper: Paper = "a4") -> bytes:
    """Return the pattern as a whole page in UTF-8; equal patterns and pictures give equal bytes."""
    blocks = page(pattern, pictures)
    return html_of(blocks, pattern.title, pattern.terms, paper, pattern.edition, asks=pattern.asks)


def html_of(
    blocks: Iterable[Block],
    title: str,
    terms: Terms,
    paper: Paper = "a4",
    edition: str = "",
    *,
    asks: str = "",
    words: PageWords = ENGLISH,
) -> bytes:
    """Return blocks as a whole page in UTF-8, with the edition at its foot and at that of each printed page.

    So stands `asks`, which says where to ask whether it was corrected; neither holds a quotation mark.

    `words` are those of the page itself, in the language of the blocks.
    """
    foot = f' @bottom-left {{ content: "{edition}"; font-size: 8.5pt; }}' if edition else ""
    foot += f' @bottom-center {{ content: "{asks}"; font-size: 6.5pt; }}' if asks else ""
    style, script = f"{_own('pattern.css')}@page {{ size: {PAPERS[paper]};{foot} }}\n", _own("ticks.js")
    end = (f"<footer>{escape(edition)}</footer>",) if edition else ()
    body = "\n".join((*_all(blocks, words), *end))
    name = sha256(body.encode()).hexdigest()[:16]
    return (
        f'<!doctype html>\n<html lang="{words.code or LANGUAGES[terms]}" data-pattern="{name}">\n<head>\n'
        f'<meta charset="utf-8">\n<meta http-equiv="Content-Security-Policy" content="{_policy(style, script)}">\n'
        '<meta name="viewport" content="width=device-width, initial-scale=1">\n'
        f"<title>{escape(title)}</title>\n<style>{style}</style>\n</head>\n<body>\n<main>\n{body}\n</main>\n<script>{script}</script>\n</body>\n</html>\n"
    ).encode()


def _own(name: str) -> str:
    return files("counterpane.press").joinpath(name).read_text("utf-8")


def _policy(style: str, script: str) -> str:
    hashes = (b64encode(sha256(each.encode()).digest()).decode() for each in (style, script))
    return "default-src 'none'; img-src data:; style-src 'sha256-{}'; script-src 'sha256-{}'".format(*hashes)


def _all(blocks: Iterable[Block], words: PageWords) -> Iterator[str]:
    for number, block in enumerate(blocks):
        yield from _laid_out(block, number, words)


def _laid_out(block: Block, number: int, words: PageWords) -> Iterator[str]:
    match block:
        case Heading(text, level):
            yield f"<h{level}>{_said(text, words)}</h{level}>"
        case Paragraph(text):
            stop = ' class="stop"' if text.startswith(words.stop) else ""
            yield f"<p{stop}>{_said(text, words)}</p>"
        case Items(texts) if texts:
            yield f"<ul>{''.join(f'<li>{_said(text, words)}</li>' for text in texts)}</ul>"
        case Entries(entries) if entries:
            said = (f"<dt>{_said(entry.name, words)}</dt><dd>{_said(entry.text, words)}</dd>" for entry in entries)
            yield f"<dl>{''.join(said)}</dl>"
        case Instructions(lines=lines):
            rows = (_row(line, f"row-{number}-{place}", words) for place, line in enumerate(lines))
            yield f'<ol class="rows">{"".join(rows)}</ol>'
        case Orders(lines):
            yield from (f'<p class="orders">{_said(line, words)}</p>' for line in lines)
            if any(line.startswith(words.again) for line in lines):
                yield _counter(f"times-{number}", words.times)
        case Figure(picture):
            yield _figure(picture)
        case Table(heads, rows):
            yield _table(heads, rows, words)
        case _:
            pass


def _table(heads: Sequence[str], rows: Sequence[Sequence[str]], words: PageWords) -> str:
    head = "".join(f'<th scope="col">{_said(cell, words)}</th>' for cell in heads)
    body = "".join(f"<tr>{''.join(f'<td>{_said(cell, words)}</td>' for cell in row)}</tr>" for row in rows)
    return f"<table><thead><tr>{head}</tr></thead><tbody>{body}</tbody></table>"


def _row(line: str, name: str, words: PageWords) -> str:
    return f'<li><label><input type="checkbox" id="{name}"><span>{_said(line, words)}</span></label></li>'


def _said(text: str, words: PageWords) -> str:
    """Return a text for the page, with what stands in English on a page of another language marked as that."""
    pieces = ((escape(piece), english) for piece, english in in_languages(text, words))
    return "".join(f'<span lang="en">{piece}</span>' if english else piece for piece, english in pieces)


def _counter(name: str, times: str) -> str:
    return (
        f'<p class="again"><label for="{name}">{escape(times)}</label>'
        f'<input type="number" id="{name}" min="0" max="9999" inputmode="numeric" value="0"></p>'
    )


def _figure(picture: Picture) -> str:
    data = b64encode(picture.svg.encode()).decode()
    size = 'width="{}" height="{}"'.format(*picture.size)
    fits = "" if picture.kind == "chart" else ' class="fits"'
    return (
        f'<figure><div tabindex="0" role="group" aria-label="{escape(picture.name)}">'
        f'<img src="data:image/svg+xml;base64,{data}" {size}{fits} alt="{escape(picture.words)}"></div>'
        f"<figcaption>{escape(picture.name)}</figcaption></figure>"
    )
