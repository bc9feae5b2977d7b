"""Plans: a request read, worked out, proved, told as JSON values; in several sizes, at another gauge, for a class."""
