"""The plan on paper and for other programs: `write(plan, formats)`."""

from __future__ import annotations

from collections.abc import Mapping

from setout.plan.model import Plan

FORMATS = ("pdf", "html", "csv", "json", "svg")


def write(plan: Plan, formats: frozenset[str]) -> Mapping[str, bytes]:
    """File name → bytes, for the formats asked for (of FORMATS). The same plan gives the same bytes.

    packet.pdf, packet.html, cutlist.csv, buy.csv, job.json, and .svg files in folders of their own.
    """
    from setout.write.files import files

    return files(plan, formats)


__all__ = ["FORMATS", "write"]
