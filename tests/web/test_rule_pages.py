"""The pages of the rules: each rule has one, and what is said of its bad example is worked out afresh."""

from __future__ import annotations

import re
from html import unescape

import pytest
from flask.testing import FlaskClient

from counterpane import wiring
from counterpane.craft.findings import Rule
from counterpane.craft.rules import ALL
from counterpane.library.rules import MOST_SHOWN, shown

each_rule = pytest.mark.parametrize("rule", ALL.values(), ids=lambda rule: rule.slug)


@pytest.fixture(scope="module")
def client() -> FlaskClient:
    """Return a client of the application; the pages need no starters in the library."""
    return wiring.app_of(wiring.open_library(starters=False)).test_client()


def page(client: FlaskClient, rule: Rule) -> str:
    """Return the page of a rule as the reader sees its characters."""
    answer = client.get(f"/rules/{rule.slug}")
    assert answer.status_code == 200
    return unescape(answer.text)


@each_rule
def test_a_page_shows_that_the_bad_example_fails(rule: Rule, client: FlaskClient) -> None:
    """The finding of the rule itself stands between the bad example and the good one."""
    text = page(client, rule)
    said = text.partition("<h2>What is said of it</h2>")[2].partition("<h2>")[0]
    assert shown(rule.bad) in text and f"<code>{rule.slug}</code>" in said


@each_rule
def test_a_page_has_title_reason_good_example_and_source(rule: Rule, client: FlaskClient) -> None:
    """All that the rule carries; backticks become code."""
    text = re.sub("</?code>", "`", page(client, rule))
    assert all(part in text for part in (rule.title, rule.reason, rule.good, rule.source))


@each_rule
def test_the_list_of_rules_names_every_rule_with_its_page(rule: Rule, client: FlaskClient) -> None:
    """By family, with its severity."""
    assert f'<a href="/rules/{rule.slug}">' in client.get("/rules").text
    assert client.get(f"/v1/rules/{rule.slug}").json["page"] == f"/rules/{rule.slug}"


def test_a_correction_stands_on_the_page(client: FlaskClient) -> None:
    """What the tool offers for the bad example is shown with it."""
    assert "<code>Row 1: K8, p2.</code>" in client.get("/rules/row-runs-short").text


def test_a_rule_of_safety_is_not_accepted(client: FlaskClient) -> None:
    """Its page offers no line by which a text could."""
    text = client.get("/rules/pom-pom").text
    assert "It cannot be accepted" in text and "Accept pom-pom" not in text


def test_an_unknown_rule_has_no_page(client: FlaskClient) -> None:
    """It is a problem of its own."""
    assert client.get("/rules/nope").json["type"] == "/problems/not-found"


@pytest.mark.parametrize("path", ["/rules", "/rules/row-runs-short", "/rules/parts-share-no-count"])
def test_a_page_of_a_rule_has_no_script_and_no_style_of_its_own(path: str, client: FlaskClient) -> None:
    """The policy forbids them, and every link leads into the same place."""
    answer = client.get(path)
    assert not re.search(r"<script|<style|style=|\son\w+=", answer.text)
    assert all(link.startswith(("/", "#")) for link in re.findall(r'(?:href|src)="([^"]*)"', answer.text))
    assert "default-src 'none'" in answer.headers["Content-Security-Policy"]


def test_an_example_of_many_pages_is_shown_by_its_beginning() -> None:
    """How much more there is stands behind it; a short example is shown whole."""
    assert shown("Row 1: Knit.") == "Row 1: Knit."
    assert shown("k" * (MOST_SHOWN + 1234)) == f"{'k' * MOST_SHOWN} … (and 1,234 characters more)"
