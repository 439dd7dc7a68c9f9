"""Placeholder."""
def solve_sticks(lengths, sticks, budget=None, progress=None):
    raise NotImplementedError
