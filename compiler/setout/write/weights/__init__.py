"""What it weighs, how it sags, how it moves, whether it tips."""

from setout.write.weights.build import Weights, build

__all__ = ["Weights", "build"]
