"""`counterpane translate`: what a translator's file has words for, and the template to begin one with."""

from __future__ import annotations

import argparse
from typing import TYPE_CHECKING

from counterpane.cli import endings, output
from counterpane.cli.options import folder

if TYPE_CHECKING:
    from collections.abc import Iterator

NAME = "translate"
ABOUT = """Tell how complete a language is, in messages and in the sentences of the recipes that ship with the program.

Languages are translators' files (GNU gettext) in seeds/languages; --template writes the file to begin another with."""
EXAMPLES = """examples:
  $ counterpane translate de
  $ counterpane translate --template --out counterpane.pot"""


def declare(parser: argparse.ArgumentParser) -> None:
    """Add the options."""
    parser.add_argument("language", metavar="CODE", nargs="?", help="the code of a language, such as de")
    parser.add_argument("--template", action="store_true", help="write the template of translators' files")
    parser.add_argument("--out", type=folder, metavar="PATH", help="write the template into this file")


def run(options: argparse.Namespace) -> int:
    """Write the template, or tell how complete a language is."""
    from counterpane.seeding import languages
    from counterpane.seeding.roots import language_codes

    if options.template:
        output.deliver(languages.template().decode(), options.out)
        return endings.DONE
    code = options.language
    if code not in language_codes():
        raise endings.Missing(f"there is no language {code!r}", f"Languages are {', '.join(language_codes())}.")
    language = languages.load_language(code)
    every = languages.messages()
    said = sum(language.knows(message) for message in every)
    reviewed = "reviewed" if language.reviewed else "not reviewed"
    output.put(f"{language.name} ({code}): {said} of {len(every)} messages; {reviewed} by a native editor\n")
    for line in (*_recipes(code), *(f"fault: {fault}" for fault in languages.faults_of(language))):
        output.put(f"{line}\n")
    return endings.DONE


def _recipes(code: str) -> Iterator[str]:
    """Tell of each recipe how many of its sentences are translated, and which stand in English."""
    from counterpane import wiring
    from counterpane.cli.planning import bench_over
    from counterpane.library.patterns.pages import pictures_for
    from counterpane.library.plans import planning
    from counterpane.press.translated import Translation
    from counterpane.seeding.recipes import load_recipes

    for recipe in load_recipes():
        with bench_over(recipe, None) as bench:
            plan = bench.made(planning.planned_part(recipe))
            pattern = planning.pattern_of(plan, recipe, bench.known)
        whole = Translation(wiring.telling_in(code))
        whole.blocks(pattern, pictures_for(plan, pattern, bench.known.vocabulary, "text"))
        found = whole.completeness
        yield f"{recipe['name']}: {found.translated} of {found.sentences} sentences"
        yield from (f"    in English: {sentence}" for sentence in dict.fromkeys(found.missing))
