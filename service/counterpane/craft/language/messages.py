"""Messages and what a language says for each: forms by number, signs of decimals and thousands."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from dataclasses import dataclass, field


@dataclass(frozen=True, slots=True)
class Message:
    """An English sentence or part of one, with named places for values.

    `plural` is the same for several, "" where there is but one form; `context` tells words apart that are no sentence:
    parts of rows, names, abbreviations. `note` tells a translator what the message is for.
    """

    english: str
    plural: str = ""
    context: str = ""
    note: str = ""

    @property
    def key(self) -> tuple[str, str]:
        """What a language knows the message by."""
        return self.context, self.english


@dataclass(frozen=True, slots=True)
class Language:
    """What a language says for messages, by their keys: one form, or one for each number that it tells apart.

    `form_of` gives the place of the form for a number. `reviewed` says whether a native editor has read it all.
    """

    code: str
    name: str
    said: Mapping[tuple[str, str], tuple[str, ...]] = field(default_factory=dict)
    form_of: Callable[[int], int] = lambda number: int(number != 1)
    decimal: str = "."
    group: str = ","
    reviewed: bool = False

    def knows(self, message: Message) -> bool:
        """Tell whether the message is translated."""
        return message.key in self.said

    def say(self, message: Message, number: int | None = None, /, **values: str) -> str:
        """Say a message with its values, in English where it is not translated; `number` chooses the form."""
        english = (message.english, message.plural) if message.plural else (message.english,)
        forms = self.said.get(message.key)
        if forms is None:
            place = int(number != 1) if message.plural and number is not None else 0
            return _filled(english[place], values)
        return _filled(forms[self.form_of(number) if message.plural and number is not None else 0], values)

    def figure(self, english: str) -> str:
        """Write an English number with the signs of the language: "1,836.5" as "1.836,5"."""
        return english.translate({ord(","): self.group, ord("."): self.decimal})


def _filled(form: str, values: Mapping[str, str]) -> str:
    for name, value in values.items():
        form = form.replace(f"{{{name}}}", value)
    return form


ENGLISH = Language("en", "English")
"""The language of the messages themselves: it says each as it stands."""
