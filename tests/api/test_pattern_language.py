"""Patterns in another language over HTTP and at the command line."""

from io import BytesIO

import pytest
from flask.testing import FlaskClient
from pypdf import PdfReader

from counterpane.api.examples import BLANKET


def test_a_pattern_in_german_says_what_it_is(client: FlaskClient) -> None:
    """Language, that nobody has reviewed it, and how much of it is translated; the counts are the same."""
    english = client.post("/v1/patterns", json=BLANKET).json["pattern"]
    answer = client.post("/v1/patterns", json=BLANKET | {"language": "de"}).json
    told = answer["pattern"]["translation"]
    assert (told["language"], told["reviewed"]) == ("de", False)
    assert told["translated"] + len(told["in_english"]) <= told["sentences"]
    assert told["notice"].startswith("Ungeprüfte Übersetzung")
    assert " ".join(told["notice"].split()) in " ".join(answer["text"].split())
    after = [row["after"] for section in english["sections"] for row in section["rows"]]
    assert after == [row["after"] for section in answer["pattern"]["sections"] for row in section["rows"]]


def test_a_page_in_german_says_so_to_the_browser(client: FlaskClient) -> None:
    """So that it is read aloud and hyphenated as German."""
    page = client.post("/v1/patterns", json=BLANKET | {"language": "de", "as": "html"})
    assert '<html lang="de"' in page.text
    assert "Bisher so oft gearbeitet" in page.text


def test_a_pdf_in_german_says_so_to_its_reader(client: FlaskClient) -> None:
    """The language of the document."""
    made = client.post("/v1/patterns", json=BLANKET | {"language": "de", "as": "pdf"}).data
    assert PdfReader(BytesIO(made)).root_object["/Lang"] == "de"


@pytest.mark.parametrize(
    ("more", "place"),
    [
        ({"language": "xx"}, "/language"),
        ({"language": "de", "terms": "uk"}, "/terms"),
        ({"language": "de", "sheet": "designer"}, "/language"),
    ],
)
def test_a_language_that_cannot_be_had_is_refused(client: FlaskClient, more: dict[str, str], place: str) -> None:
    """With the place in the request, and the next step."""
    problem = client.post("/v1/patterns", json=BLANKET | more)
    assert problem.status_code == 422
    assert problem.json["errors"][0]["pointer"] == place
