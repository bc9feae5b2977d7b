"""The files of translators: the template is what the code gives, and what a language says fits its messages."""

import pytest

from counterpane.craft.language import placeholders
from counterpane.seeding.faults import SeedFault
from counterpane.seeding.languages import faults_of, load_language, messages, read_language, template
from counterpane.seeding.roots import language_codes, seeds_root

HEAD = b'msgid ""\nmsgstr ""\n"Content-Type: text/plain; charset=utf-8\\n"\n'


def test_the_template_is_what_the_code_gives() -> None:
    """`counterpane translate --template` writes it."""
    assert (seeds_root() / "languages" / "counterpane.pot").read_bytes() == template()


@pytest.mark.parametrize("code", language_codes())
def test_a_language_fits_its_messages(code: str) -> None:
    """Each message is in the template, has the same places in every form, and all the forms of the language."""
    language = load_language(code)
    assert list(faults_of(language)) == []
    for message in messages():
        if message.plural and language.knows(message):
            assert len(language.said[message.key]) == 2
            assert all(placeholders(form) <= placeholders(message.plural) for form in language.said[message.key])


def test_german_says_that_nobody_has_reviewed_it() -> None:
    """The head of its file says so too."""
    assert not load_language("de").reviewed
    assert b"No native editor has reviewed" in (seeds_root() / "languages" / "de.po").read_bytes()


def test_an_unknown_language_is_a_fault_with_those_there_are() -> None:
    """It names what was asked for."""
    with pytest.raises(SeedFault, match="xx"):
        load_language("xx")


def test_other_places_and_unknown_messages_are_told() -> None:
    """A translator who loses a place, or translates what is not there, is told."""
    content = (
        HEAD + b'\nmsgid "Cast on {n1} sts."\nmsgstr "Anschlagen."\n\nmsgid "Nobody says this."\nmsgstr "Niemand."\n'
    )
    faults = "\n".join(faults_of(read_language(content, "de", "x.po")))
    assert "'Anschlagen.' has other places" in faults
    assert "'Nobody says this.' is in no template" in faults


def test_a_fuzzy_translation_is_none() -> None:
    """It waits for somebody to look at it."""
    content = HEAD + b'\n#, fuzzy\nmsgid "Dry flat."\nmsgstr "Trocken."\n'
    assert read_language(content, "de", "x.po").said == {}
