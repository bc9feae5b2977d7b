"""Components of a library: adding and finding them, what follows from them, what is like them, what goes with them."""
