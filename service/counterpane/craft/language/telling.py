"""Sentences in another language: each is found among the messages, and its values are said in their own way."""

from __future__ import annotations

import re
from collections.abc import Iterable, Iterator, Sequence
from dataclasses import dataclass

from counterpane.craft.language.messages import Language, Message
from counterpane.craft.language.rows import ROW, STITCH, Sayer, stitch_message
from counterpane.craft.language.values import Way, longest_words, pattern_of, placeholders, way_of
from counterpane.craft.rows.read import read_row
from counterpane.craft.stitches import Vocabulary

IN_ENGLISH = Message("[in English: {own}]", note="Around what is not translated.")
ABBREVIATION, NAME, SIDE, WORD = "abbreviation", "name", "side", "word"
"""Contexts of messages: an abbreviation, the name of a part, the side of a row as a noun, a word by itself."""

_SENTENCE = re.compile(r"(?<=[.!?])\s+(?=[A-Z0-9(])")
_LISTED = re.compile("; |, (?=body|bottom|top)")
_STEPS = re.compile("; (?=RS|WS)")
KEPT = 20_000
"""Sentences that stay said, those of some twenty patterns; house figure that bounds the memory of a server."""
_FEW_LETTERS = 4
"""Letters of a message that only joins others; house figure."""
_DEEPEST = 6
"""Sentences within sentences that are looked into; house figure."""


@dataclass(frozen=True, slots=True)
class Told:
    """A text in the other language; `missing` is what stayed in English, `sentences` how many were to be said."""

    text: str
    missing: tuple[str, ...] = ()
    sentences: int = 1


class Telling:
    """Says the sentences of a pattern in one language."""

    def __init__(self, language: Language, messages: Iterable[Message], vocabulary: Vocabulary) -> None:
        self.language = language
        self.vocabulary = vocabulary
        self.rows = Sayer(language, vocabulary)
        told = [message for message in messages if not message.context and language.knows(message)]
        self._plain = {message.english: message for message in told if not placeholders(message.english)}
        forms = [(message, form) for message in told for form in (message.english, message.plural) if form]
        forms.sort(key=lambda each: -sum(map(len, re.split(r"\{\w+\}", each[1]))))
        self._open = [(longest_words(form), pattern_of(form), message) for message, form in forms if placeholders(form)]
        self._found: dict[tuple[str, int], Told] = {}

    def tell(self, text: str) -> Told:
        """Say a text of one or several sentences."""
        return self._told(text, 0)

    def _told(self, text: str, depth: int) -> Told:
        """Say a text so deep in others; what one pattern says once it says often, whole and as a part of sentences."""
        told = self._found.get((text, depth))
        if told is None:
            if len(self._found) >= KEPT:
                self._found.clear()
            told = self._found[text, depth] = self._tell(text, depth)
        return told

    def name(self, name: str) -> str:
        """Say the name of a part; one that is not translated stays as it is."""
        known = Message(name, context=NAME)
        capital = Message(f"{name[:1].upper()}{name[1:]}", context=NAME)
        return self.language.say(capital if self.language.knows(capital) and self.language.code != "en" else known)

    def word(self, word: str) -> str:
        """Say a word by itself; a number behind it stays where the word is not known with it."""
        stem, space, number = word.rpartition(" ")
        if space and number.isdigit() and not self.language.knows(Message(word, context=WORD)):
            return f"{self.word(stem)} {number}"
        return self.language.say(Message(word, context=WORD))

    def short(self, name: str) -> str:
        """Say an abbreviation of a row: the name of a stitch or another short word."""
        numbers = stitch_message(name)[1]
        known = self._shorts(name)
        values = {f"n{place}": each for place, each in enumerate(numbers, 1)}
        return self.language.say(known[0], None, **values) if known else name

    def _shorts(self, name: str) -> list[Message]:
        """Return the messages that an abbreviation may be."""
        english = stitch_message(name)[0].english
        messages = (Message(english, context=context) for context in (ABBREVIATION, STITCH, ROW))
        return [message for message in messages if self.language.knows(message)]

    def _tell(self, text: str, depth: int) -> Told:
        if not text.strip() or depth > _DEEPEST:
            return self._missing(text) if text.strip() else Told(text, sentences=0)
        whole = self._whole(text, depth)
        if whole is not None and not whole.missing:
            return whole
        sentences = _SENTENCE.split(text)
        if len(sentences) > 1:
            told = [self._told(sentence, depth) for sentence in sentences]
            missing = tuple(each for one in told for each in one.missing)
            if whole is None or len(missing) < len(whole.missing):
                return Told(" ".join(one.text for one in told), missing, sum(one.sentences for one in told))
        return whole or self._missing(text)

    def _missing(self, text: str) -> Told:
        return Told(self.language.say(IN_ENGLISH, own=text), (text,))

    def _whole(self, text: str, depth: int) -> Told | None:
        """Say a text that is one message: by the first that leaves nothing in English, else by the best."""
        if text in self._plain:
            return Told(self.language.say(self._plain[text]))
        best: Told | None = None
        for told in self._ways(text, depth):
            if not told.missing:
                return told
            if best is None or len(told.missing) < len(best.missing):
                best = told
        return best

    def _ways(self, text: str, depth: int) -> Iterator[Told]:
        for words, pattern, message in self._open:
            if words in text and (match := pattern.fullmatch(text)):
                told = self._filled(message, match, depth)
                if told is not None and not (told.missing and _only_joins(message)):
                    yield told

    def _filled(self, message: Message, match: re.Match[str], depth: int) -> Told | None:
        """Say a message with the values of a sentence; None where a value that must be a row is none."""
        values, missing, sentences = dict[str, str](), list[str](), 0
        for name, value in match.groupdict().items():
            told = self._value(name, value, depth)
            if told is None:
                return None
            values[name] = told.text
            missing += told.missing
            sentences += told.sentences
        number = match.groupdict().get("n")
        said = self.language.say(message, _whole_number(number) if number else None, **values)
        return Told(said, tuple(missing), max(1, sentences))

    def _value(self, name: str, value: str, depth: int) -> Told | None:
        match way_of(name):
            case "sentence":
                return self._told(value, depth + 1)
            case "list":
                return _joined([self._told(each, depth + 1) for each in _LISTED.split(value)], _LISTED.search(value))
            case "steps":
                return _joined([self._told(each, depth + 1) for each in _STEPS.split(value)], _STEPS.search(value))
            case "row":
                return self._row(value)
            case "stitch":
                return Told(self.short(value), sentences=0) if self._shorts(value) else None
            case way:
                return Told(self._short(way, value), sentences=0)

    def _short(self, way: Way, value: str) -> str:
        """Say what is no sentence."""
        match way:
            case "number":
                return self.language.figure(value)
            case "word":
                return self.word(value)
            case "words":
                return ", ".join(map(self.word, value.split(", ")))
            case "side":
                return self.language.say(Message(value, context=SIDE))
            case "name":
                return self.name(value)
            case "names":
                return "; ".join(map(self.name, value.split("; ")))
        return value

    def _row(self, words: str) -> Told | None:
        """Say a row again from its tree; None where the words are no row."""
        read = read_row(words, self.vocabulary, "us")
        if read.faults or not read.parts:
            return None
        said, missing = self.rows.say(read.parts)
        capital = words[:1].isupper()
        return Told(f"{said[:1].upper()}{said[1:]}" if capital else said, missing)


def _whole_number(number: str) -> int:
    """Return which number decides the form; a broken one counts as several."""
    return int(number.replace(",", "")) if re.fullmatch(r"[\d,]+", number) else 0


def _only_joins(message: Message) -> bool:
    """Tell whether a message has hardly a word of its own: half of such a sentence is better left in English whole."""
    return len(re.sub(r"\{\w+\}|[^a-z]", "", message.english)) <= _FEW_LETTERS


def _joined(told: Sequence[Told], between: re.Match[str] | None) -> Told:
    """Put the parts of a list together with what stands between them."""
    missing = tuple(each for one in told for each in one.missing)
    text = (between.group() if between else "").join(one.text for one in told)
    return Told(text, missing, sum(one.sentences for one in told))
