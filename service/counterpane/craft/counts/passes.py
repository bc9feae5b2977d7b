"""How often the rows can be worked again: drift, and repeats that stop at a stated number of stitches."""

from __future__ import annotations

from counterpane.craft.counts.needle import MOST_STITCHES
from counterpane.craft.counts.values import Chain


def can_repeat(chain: Chain) -> bool:
    """Say whether the count after one pass is of the class that the rows take, so that they can be worked again.

    With stitches lost at each pass the least count ends it: `passes_from` tells after how many.
    """
    if len(chain.starts) != 1 or chain.ratio is None:
        return False
    start = chain.starts[0]
    if start.of == 0 or chain.drift == 0:
        return chain.drift == 0
    end = chain.ends[0]
    if chain.drift is not None:
        return chain.drift % start.of == 0
    return (end - start.least) % start.of == 0 and chain.ratio.denominator == 1 and end >= start.least


def passes_from(chain: Chain, start: int) -> int | None:
    """Return how many passes can be worked from a count; None for as many as wanted."""
    if not chain.admits(start):
        return 0
    if chain.drift == 0:
        return None
    if chain.drift is None or len(chain.starts) != 1:
        return _passes_one_by_one(chain, start)
    takes = chain.starts[0]
    if takes.of == 0 or chain.drift % takes.of:
        return 1
    return None if chain.drift > 0 else (start - takes.least) // -chain.drift + 1


def _passes_one_by_one(chain: Chain, start: int) -> int | None:
    # The distance from the count that stays the same is multiplied by the ratio at each pass: it runs out of whole
    # numbers or of ordinary sizes after few passes.
    done = 0
    while chain.admits(start):
        after = chain.after(start)
        if after == start or after > MOST_STITCHES:
            return None
        start, done = after, done + 1
    return done


def passes_until(chain: Chain, start: int, remain: int) -> int | None:
    """Return the passes after which `remain` stitches are left; None where that is never reached."""
    if start == remain:
        return 0
    possible = passes_from(chain, start)
    if chain.drift is None:
        return _passes_down_to(chain, start, remain)
    if chain.drift == 0 or (remain - start) % chain.drift:
        return None
    wanted = (remain - start) // chain.drift
    return wanted if wanted > 0 and (possible is None or wanted <= possible) else None


def _passes_down_to(chain: Chain, start: int, remain: int) -> int | None:
    done = 0
    while start != remain:
        if not chain.admits(start) or start > MOST_STITCHES or chain.after(start) == start:
            return None
        start, done = chain.after(start), done + 1
    return done
