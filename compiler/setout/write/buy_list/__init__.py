"""What to buy."""

from setout.write.buy_list.build import BuySheet, build
from setout.write.buy_list.table import COLUMNS, table

__all__ = ["COLUMNS", "BuySheet", "build", "table"]
