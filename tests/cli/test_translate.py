"""`counterpane translate`: how complete a language is, and the template to begin another with."""

from __future__ import annotations

from cli.conftest import Type
from counterpane.seeding.recipes import load_recipes


def test_each_recipe_is_told_with_what_stays_in_english(typed: Type) -> None:
    """A line a recipe, as many sentences under it at the most as are not translated."""
    done = typed("translate", "de")
    lines = done.out.splitlines()
    heads = [line for line in lines[1:] if line.endswith(" sentences")]

    assert done.status == 0
    assert [line.partition(": ")[0] for line in heads] == [recipe["name"] for recipe in load_recipes()]
    for head, behind in zip(heads, [*heads[1:], None], strict=True):
        said, _, every = head.partition(": ")[2].removesuffix(" sentences").partition(" of ")
        own = lines[lines.index(head) + 1 : None if behind is None else lines.index(behind)]
        assert sum(line.startswith("    in English: ") for line in own) <= int(every) - int(said) < int(every)


def test_a_language_that_is_not_there_is_told_with_those_that_are(typed: Type) -> None:
    """The next step is to name one of them."""
    done = typed("translate", "xx")
    assert (done.status, "Languages are " in done.err) == (3, True)


def test_the_template_is_a_translators_file(typed: Type) -> None:
    """It has a head and messages without words."""
    done = typed("translate", "--template")
    assert done.status == 0
    assert 'msgid ""\n' in done.out
