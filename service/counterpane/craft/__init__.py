"""What is true of the craft: pure values and functions."""
