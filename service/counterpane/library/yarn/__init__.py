"""Yarn of a plan, what the yarn at hand makes, and the label of a finished piece."""
