"""`counterpane pull`: what another library has written since the last time."""

from __future__ import annotations

import argparse
from contextlib import closing
from pathlib import Path

from counterpane.cli import endings, output
from counterpane.cli.configuring import library_at, settings_of
from counterpane.cli.options import folder, take_store

NAME = "pull"
ABOUT = """Take over what another library has written since the last pull.

Its history is followed line by line. Each object is held against its hash and its schema and proved again, and kept
as mirrored, not reviewed here. What was written here is never changed: where a name is in use for something else, the
other one is kept apart and told, and its stricter safety notes are told with the one here. A pull that is broken off
goes on where it was; one with nothing to take over moves nothing. Only addresses in the setting `peers` are asked."""
EXAMPLES = """examples:
  $ counterpane pull https://library.example --store season/library.db"""


def declare(parser: argparse.ArgumentParser) -> None:
    """Add the options."""
    parser.add_argument("peer", metavar="ADDRESS", help="where the other library is served, such as https://host")
    known = "a file that holds a token for reading the other library"
    parser.add_argument("--token-file", type=folder, metavar="FILE", help=known)
    parser.add_argument("--past", action="append", default=[], metavar="HASH", help="go on without this object")
    parser.add_argument("--anew", action="store_true", help="read the other history from its beginning")
    take_store(parser)


def run(options: argparse.Namespace) -> int:
    """Pull, telling each line that brought something."""
    from counterpane.library.sharing.pulling import Pulling
    from counterpane.peers import open_peer, read

    known = {name: str(setting.value) for name, setting in settings_of().items()}
    asked = open_peer(options.peer, known["peers"], _token(options.token_file), certificates=known["peer_certificates"])
    with closing(asked) as peer:
        counts: dict[str, int] = {}
        with library_at(options.store) as services:
            for each in Pulling(services, peer, read, frozenset(options.past), options.anew).run():
                counts[each.became] = counts.get(each.became, 0) + 1
                if each.became != "held":
                    change = each.change
                    output.put(f"{each.became} {change.kind} {change.slug} {change.sha256 or ''}".rstrip() + "\n")
        told = ", ".join(f"{number} {what}" for what, number in sorted(counts.items()))
        output.tell(f"{peer.name}: {told or 'nothing to take over'}")
    return endings.DONE


def _token(path: Path | None) -> str | None:
    if path is None:
        return None
    try:
        return path.read_text("utf-8").strip()
    except FileNotFoundError:
        raise endings.Missing(f"{path}: there is no such file", "Name the file of a token.") from None
