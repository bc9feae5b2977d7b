"""The language of written rows: words, tree, reader, and the way back to words."""
