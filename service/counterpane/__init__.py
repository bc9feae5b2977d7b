"""Counterpane proves that the parts of a knitted baby blanket fit, and writes the pattern."""

__version__ = "0.2.0"
