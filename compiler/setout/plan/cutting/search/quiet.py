"""HiGHS without a word: as it comes it greets on standard output, which belongs to the documents asked for."""

from __future__ import annotations

import highspy


class Quiet(highspy.Highs):
    """One thread, so that the same programme has the same answer on every machine."""

    def enableCallbacks(self) -> None:
        """Called by HiGHS's own start, where the greeting would come."""
        self.setOptionValue("output_flag", False)
        self.setOptionValue("threads", 1)
        super().enableCallbacks()
