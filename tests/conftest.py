"""What holds for every test: with CI=true nothing is skipped, since what is not looked at is not shown to work."""

from __future__ import annotations

import os
from collections.abc import Generator
from typing import TypeVar

import pytest

Report = TypeVar("Report", pytest.TestReport, pytest.CollectReport)

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
