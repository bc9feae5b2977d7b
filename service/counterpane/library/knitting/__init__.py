"""With a piece on the needles or finished: which row it is, what went wrong, what was noted."""
