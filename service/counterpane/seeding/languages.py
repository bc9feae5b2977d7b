"""seeds/languages: the messages to be translated, and translators' files (GNU gettext) of what each language says.

The template is made from the phrases of patterns in `phrases/*.toml`, the phrases of rows, the vocabulary, the
starters, the facts, the rules and the standing cautions. Babel writes and reads the files, and knows plurals and the
signs of numbers; it is loaded where a language is asked for.
"""

from __future__ import annotations

import re
from collections.abc import Iterable, Iterator
from functools import cache
from gettext import c2py
from io import BytesIO
from pathlib import Path
from typing import TYPE_CHECKING

from counterpane.craft.language import Language, Message, placeholders
from counterpane.craft.language.rows import PHRASES, stitch_message
from counterpane.craft.language.values import with_places
from counterpane.craft.pattern.parts import called
from counterpane.craft.pattern.terms import in_terms
from counterpane.craft.rows.glossary import SHORT_WORDS
from counterpane.craft.rules.safety import RULES
from counterpane.library.patterns.cautions import CAUTIONS
from counterpane.library.safety.conflicts import CONFLICTS, Conflict
from counterpane.library.safety.safety_record import HOME_CHECK
from counterpane.seeding.components import read_components
from counterpane.seeding.facts import facts_by_name
from counterpane.seeding.faults import SeedFault, nearest
from counterpane.seeding.roots import language_codes, seeds_root, toml_files
from counterpane.seeding.shape import read_toml
from counterpane.seeding.vocabulary import load_vocabulary

if TYPE_CHECKING:
    from babel.messages.catalog import Catalog

FOLDER = "languages"
TEMPLATE = "counterpane.pot"
_TOLD_FACTS = ("finishing-", "ends-")
"""Beginnings of the names of facts whose words stand in patterns."""
_REVIEWED = "X-Reviewed-By-Native-Editor"
"""The field in the head of a translator's file that says whether a native editor has read it: yes or no."""


def load_language(code: str, root: Path | None = None) -> Language:
    """Load a language; SeedFault where there is no file of it, or where it does not hold."""
    return _load(code, root or seeds_root())


@cache
def _load(code: str, root: Path) -> Language:
    codes = language_codes(root)
    if code not in codes:
        raise SeedFault(f"seeds/{FOLDER}", code, "there is no such language", nearest(code, codes))
    return read_language((root / FOLDER / f"{code}.po").read_bytes(), code, f"seeds/{FOLDER}/{code}.po")


def read_language(content: bytes, code: str, file: str) -> Language:
    """Read a translator's file; messages without a translation, or whose translation is fuzzy, are left out."""
    from babel import Locale
    from babel.messages.pofile import PoFileError, read_po
    from babel.numbers import get_decimal_symbol, get_group_symbol

    try:
        catalog = read_po(BytesIO(content), locale=code, abort_invalid=True)
    except (PoFileError, UnicodeDecodeError) as fault:
        raise SeedFault(file, "", f"not a translator's file: {fault}", "Correct it there.") from fault
    said = {}
    for entry in catalog:
        forms = (entry.string,) if isinstance(entry.string, str) else tuple(entry.string or ())
        english = entry.id if isinstance(entry.id, str) else entry.id[0]
        if entry.id and forms and all(forms) and not entry.fuzzy:
            said[entry.context or "", english] = forms
    return Language(
        code=code,
        name=Locale.parse(code).get_language_name(code) or code,
        said=said,
        form_of=c2py(catalog.plural_expr),
        decimal=get_decimal_symbol(code),
        group=get_group_symbol(code),
        reviewed=_header(content, _REVIEWED) == "yes",
    )


def _header(content: bytes, name: str) -> str:
    """Return a field of the head that the reader of the file does not keep."""
    found = re.search(rf'^"{name}: (.*?)\\n"$', content.decode("utf-8", "replace"), re.MULTILINE)
    return found[1].strip() if found else ""


@cache
def messages(root: Path | None = None) -> tuple[Message, ...]:
    """Return all messages of patterns, each once, in the order of the template."""
    every = {message.key: message for message in _every(root or seeds_root())}
    return tuple(every.values())


def _every(root: Path) -> Iterator[Message]:
    yield from _phrases(root)
    for phrase in PHRASES:
        yield Message(phrase.english, phrase.plural, phrase.context, "A phrase of a row.")
    for stitch in load_vocabulary(root).stitches.values():
        yield Message(stitch_message(stitch.names["us"][0])[0].english, context="stitch", note="A stitch in a row.")
        yield Message(_numbers_as_places(stitch.said["us"]), note="A stitch in the list of abbreviations.")
    for sign, means in SHORT_WORDS.items():
        yield Message(sign, context="abbreviation", note=means)
        yield Message(means, note="In the list of abbreviations.")
    yield from _of_components(root)
    for name, fact in facts_by_name().items():
        if name.startswith(_TOLD_FACTS):
            yield Message(with_places(str(fact["says"])), note="A fact of the trade.")
    for rule in RULES:
        yield Message(f"{rule.title[0].lower()}{rule.title[1:].rstrip('.')}", note="What a safety rule looks for.")
    for caution in (*CAUTIONS, *HOME_CHECK):
        yield Message(caution, note="A caution of every pattern.")
    for conflict in CONFLICTS:
        yield from _of_conflict(conflict)


def _phrases(root: Path) -> Iterator[Message]:
    for path, file in toml_files(root, f"{FOLDER}/phrases"):
        content = read_toml(path, file)
        for phrase in content["messages"]:
            one, several = (phrase, "") if isinstance(phrase, str) else phrase
            yield Message(one, several, content.get("context", ""), content["about"])


def _of_components(root: Path) -> Iterator[Message]:
    for component in read_components(root):
        yield Message(called(component, "us"), context="name", note=f"The name of a part: {component.slug}.")
        steps = component.operation.steps if component.operation else ()
        for text in (*steps, component.gauge_notes):
            if text:
                yield Message(with_places(in_terms(text, "us")), note=component.slug)


def _of_conflict(conflict: Conflict) -> Iterator[Message]:
    """Give what sources say against each other, with places for the rules and the sources, and how it is treated."""
    sides = "; ".join(f"{each.who}: {each.says} [{{own{place}}}]" for place, each in enumerate(conflict.statements, 2))
    note = "What sources say against each other."
    yield Message(f"On {conflict.about} ({{own1}}): {sides}.", note=note)
    yield Message(conflict.treated, note=note)


def _numbers_as_places(text: str) -> str:
    numbers = iter(range(1, len(text)))
    return re.sub(r"\d+", lambda _: f"{{n{next(numbers)}}}", text)


def template() -> bytes:
    """Write the template of translators' files: each message once, with nothing said for it."""
    from babel.messages.pofile import write_po

    out = BytesIO()
    write_po(out, _catalog(messages()), width=0, omit_header=True)
    return _HEAD.encode() + out.getvalue()


_HEAD = """# Messages of the patterns that Counterpane writes. Copy it to the code of a language (fr.po) and fill it in.
msgid ""
msgstr ""
"Project-Id-Version: counterpane\\n"
"MIME-Version: 1.0\\n"
"Content-Type: text/plain; charset=utf-8\\n"
"Content-Transfer-Encoding: 8bit\\n"
"X-Reviewed-By-Native-Editor: no\\n"

"""


def _catalog(every: Iterable[Message]) -> Catalog:
    from babel.messages.catalog import Catalog

    catalog = Catalog(fuzzy=False)
    for message in every:
        entry = (message.english, message.plural) if message.plural else message.english
        catalog.add(entry, context=message.context or None, auto_comments=[message.note] if message.note else [])
    return catalog


def faults_of(language: Language) -> Iterator[str]:
    """Tell what a translator's file says wrong: unknown messages, other places, forms that are not there."""
    known = {message.key: message for message in messages()}
    for key, forms in language.said.items():
        message = known.get(key)
        if message is None:
            yield f"{key[1]!r} is in no template"
            continue
        wanted = placeholders(message.english) | placeholders(message.plural)
        yield from (f"{form!r} has other places than {key[1]!r}" for form in _other_places(message, forms, wanted))


def _other_places(message: Message, forms: tuple[str, ...], wanted: frozenset[str]) -> Iterator[str]:
    least = placeholders(message.english) & placeholders(message.plural) if message.plural else wanted
    yield from (form for form in forms if not least <= placeholders(form) <= wanted)
