"""What a row only tells a knitter to look after: markers moved, edges kept, notes. None of it is counted."""

from __future__ import annotations

import re

from counterpane.craft.rows.labels import HOW_MANY
from counterpane.craft.rows.words import Line, Token, tokens

_KEPT = rf"(?:the\s+)?(?:(?:first|last)\s+)?(?:{HOW_MANY}|edges?|borders?|edge\s+sts|border\s+sts)\b"
_FABRIC = (
    r"(?:garter|moss|seed|rib(?:bing)?|patt(?:ern)?|(?:st|stocking|stockinette)(?=\s+st))(?:\s+st(?:itch)?)?"
    r"(?:\s+(?:throughout|as\s+(?:set|before|est(?:ablished)?)))?"
)
_CARE = re.compile(
    r"(?<=\S),?\s++(?:and\s++)?"
    r"(?:(?:removing|slipping|moving|passing)\s+(?:the\s+|all\s+)?markers?"
    r"(?:\s+(?:as\s+you|when|on\s+(?:the|this)\s+(?:first|last|next|row|rnd|round))\b[a-z ]{0,30})?"
    rf"|placing\s+(?:{HOW_MANY}|an?|the)\s+markers?\b[^.;()\[\]*]{{0,120}}"
    r"|(?:picking\s+up|working|knitting|purling|lifting)\s+(?:up\s+)?(?:all\s+|any\s+|the\s+|remaining\s+){0,2}wraps?\b[^.;()\[\]*]{0,80}"
    r"|(?:break|cut|fasten|pull|draw)(?:ing)?\s+(?:off\b|through\b|(?:the\s+)?(?:yarn|wool|thread|tail|end)\b)[^.;()*]{0,80}"
    r"|do\s+not\s+turn(?:\s+(?:the\s+)?work)?"
    r"|(?:noting|taking\s+care|being\s+careful|making\s+sure|remembering|ensuring)\b[^.;()\[\]*]{0,120}"
    r"|(?:ending|finishing)\s+(?:with|on|after)\s+an?\s+(?:rs|ws|right|wrong)\b[a-z -]{0,20}\brow)(?=\s*[.;)]|\s*$)"
    rf"|(?:^|(?<=\S)),?\s*+keeping\s+{_KEPT}[^.;*()\[\]]{{0,80}}?\bin\s+{_FABRIC}(?=\s*[.;,)]|\s*$)"
    r"|(?<=[.;])\s++(?:note|nb|n\.b\.|tip)\s*[:-]\s[^*]*$"
)


# What each of these holds: looked for first, since it is quickly told and most rows have none.
_MAY_CARE = re.compile(r"ing|break|cut|fasten|pull|draw|do\s|no|n\.b|nb|tip")


def words_of_work(line: Line, start: int, end: int) -> list[Token]:
    """Return the words of a stretch of a line without those that only tell a knitter what to look after."""
    care = _CARE.search(line.text, start, end) if _MAY_CARE.search(line.text, start, end) else None
    if care is None:
        return tokens(line, start, end)
    return [*tokens(line, start, care.start()), *tokens(line, care.end(), end)]
