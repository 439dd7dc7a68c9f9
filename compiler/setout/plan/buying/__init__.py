"""What has to be bought, in whole packs."""

from setout.plan.buying.model import BuyLine, BuyList
from setout.plan.buying.stage import buying

__all__ = ["BuyLine", "BuyList", "buying"]
