"""Published editions of recipes, their errata, and what a correction or an upgrade touches."""
