"""Stores behind the port `counterpane.library.ports.Store`: in memory, and in a SQLite file."""
