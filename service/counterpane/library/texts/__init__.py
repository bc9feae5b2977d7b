"""Texts of rows that people paste: checked, said in other words, cut to one size, with the sheet of an editor."""
