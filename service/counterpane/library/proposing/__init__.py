"""Complete recipes from a wish: which parts are tried, why one is ranked before another."""
