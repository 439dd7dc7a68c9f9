"""What to buy."""

from setout.write.buy_list.build import BuySheet, build

__all__ = ["BuySheet", "build"]
