"""Boards as solids, and what is seen of them squarely or from the corner."""
