"""Sentences in another language: found among messages, with their values; what is not found is marked."""

import pytest

from counterpane.craft.language import Language, Message, Telling, placeholders, telling
from counterpane.craft.language.values import with_places
from counterpane.seeding import load_vocabulary
from counterpane.seeding.languages import load_language, messages


def german() -> Telling:
    """Return what says German."""
    return Telling(load_language("de"), messages(), load_vocabulary())


def test_one_stitch_and_two_have_their_own_forms() -> None:
    """The rule of the translator's file chooses the form."""
    assert [german().tell(f"{n} stitch{'es' * (n > 1)}").text for n in (1, 2)] == ["1 Masche", "2 Maschen"]


def test_numbers_have_the_signs_of_the_language() -> None:
    """A comma before decimals, a point between thousands."""
    assert german().tell("3.8 cm (1½ in)").text == "3,8 cm (1½ Zoll)"
    assert german().tell("1,836 stitches").text == "1.836 Maschen"


def test_a_sentence_without_a_message_stays_in_english_and_is_marked() -> None:
    """Nothing is dropped, also beside a sentence that is translated."""
    told = german().tell("Dry flat. Sing to it.")
    assert told.text == "Liegend trocknen. [englisch: Sing to it.]"
    assert told.missing == ("Sing to it.",)
    assert told.sentences == 2


def test_a_message_without_a_translation_stays_in_english() -> None:
    """An empty translation is none."""
    telling = Telling(Language("xx", "None"), [Message("Dry flat.")], load_vocabulary())
    assert telling.tell("Dry flat.").missing == ("Dry flat.",)


def test_a_value_that_looks_like_a_place_is_left_alone() -> None:
    """What a person wrote is no message."""
    assert "{n1}" in german().tell("Yarn ({n1})").text


def test_lengths_of_the_library_become_places() -> None:
    """So they stand in the units that are asked for."""
    assert with_places("Add 15 cm (6 in) and 2 cm.") == "Add {size1} and {size2}."
    assert placeholders("{size1} and {n}") == {"size1", "n"}


def test_what_stays_said_is_bounded(monkeypatch: pytest.MonkeyPatch) -> None:
    """A server says patterns for years; whatever it says is said the same afterwards."""
    monkeypatch.setattr(telling, "KEPT", 10)
    said = german()
    before = said.tell("Cast on 3 sts.").text
    for count in range(4, 60):
        said.tell(f"Cast on {count} sts.")
    assert len(said._found) <= 10
    assert said.tell("Cast on 3 sts.").text == before


def test_of_two_ways_that_leave_as_much_in_english_the_one_with_more_words_is_taken() -> None:
    """The message that has more words of its own fits the sentence better."""
    close, loose = Message("Please dry it flat: {text}"), Message("Please dry it {text}")
    language = Language("xx", "None", {close.key: ("Flat: {text}",), loose.key: ("Dry: {text}",)})
    for known in ([close, loose], [loose, close]):
        told = Telling(language, known, load_vocabulary()).tell("Please dry it flat: sing.")
        assert (told.text, told.missing) == ("Flat: [in English: sing.]", ("sing.",))
