"""What holds for every test, and what all share: the vocabulary and the starters of the seeds, loaded once.

With CI=true nothing is skipped, since what is not looked at is not shown to work.
"""

from __future__ import annotations

import os
import signal
from collections.abc import Generator, Mapping
from typing import TypeVar

import pytest
from hypothesis import settings

from counterpane.at_hand import CACHE
from counterpane.craft.component import Component
from counterpane.craft.stitches import Vocabulary
from counterpane.seeding import load_components, load_vocabulary

Report = TypeVar("Report", pytest.TestReport, pytest.CollectReport)

# The same examples each time, however slow they are, for whoever measures what the tests reach.
settings.register_profile("measured", derandomize=True, deadline=None)

# A shell ignores the interrupt in what it starts in the background, and so would every process that a test starts.
if signal.getsignal(signal.SIGINT) is signal.SIG_IGN:
    signal.signal(signal.SIGINT, signal.default_int_handler)

NO_SKIP = "CI=true allows no skip: start or install what this test needs"


@pytest.hookimpl(wrapper=True)
def pytest_runtest_makereport() -> Generator[None, pytest.TestReport, pytest.TestReport]:
    """Turn a skipped or expectedly failing test into a failure."""
    return _strict((yield))


@pytest.hookimpl(wrapper=True)
def pytest_make_collect_report() -> Generator[None, pytest.CollectReport, pytest.CollectReport]:
    """Turn a skipped file into a failure."""
    return _strict((yield))


def _strict(report: Report) -> Report:
    if report.skipped and os.environ.get("CI") == "true":
        report.outcome = "failed"
        report.__dict__.pop("wasxfail", None)  # With it, the session would not count the failure.
        report.longrepr = f"{NO_SKIP} ({report.longrepr})"
    return report


@pytest.fixture(scope="session", autouse=True)
def cache(tmp_path_factory: pytest.TempPathFactory) -> Generator[None, None, None]:
    """Keep what the program has at hand in a folder that goes with the tests."""
    with pytest.MonkeyPatch.context() as patch:
        patch.setenv(CACHE, str(tmp_path_factory.mktemp("cache")))
        yield


@pytest.fixture(scope="session")
def vocabulary() -> Vocabulary:
    """Return the vocabulary of the seeds."""
    return load_vocabulary()


@pytest.fixture(scope="session")
def starters() -> Mapping[str, Component]:
    """Return the starters by slug."""
    return {component.slug: component for component in load_components()}
