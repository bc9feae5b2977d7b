"""Counts, the first road: rows as maps on the stitch count, in closed form, at a cost independent of the count."""
