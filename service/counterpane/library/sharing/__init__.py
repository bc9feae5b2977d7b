"""Between libraries and with other programs: dumps, pulls, feeds, lists as files."""
