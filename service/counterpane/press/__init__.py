"""A written pattern as text, Markdown, a page of HTML, PDF and data, and other answers that are read on paper."""

from typing import Literal

Paper = Literal["a4", "letter"]
"""What a page is printed on: A4 of ISO 216, or Letter of ANSI/ASME Y14.1."""
