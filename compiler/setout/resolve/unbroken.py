"""What hangs on a mistake is left out with it, so that no later stage reports the mistake again as something else."""

from __future__ import annotations

from setout.resolve.bodies import Draft
from setout.resolve.context import Use


def broken_by(drafts: dict[str, Draft]) -> set[Use]:
    """The things (owner, name) and assemblies (name, "") that are spoiled or hang on what is. ("", "") is the job's own
    box."""
    hanging: dict[Use, list[Use]] = {}
    broken: list[Use] = []
    for owner, draft in drafts.items():
        if draft.spoiled:
            broken.append((owner, ""))
        for use in draft.uses:
            hanging.setdefault(use, []).append((owner, ""))
        for item in draft.items:
            if item.name and item.made is None:
                broken.append((owner, item.name))
            for use in item.uses if item.name else ():
                hanging.setdefault(use, []).append((owner, item.name))
    found: set[Use] = set()
    while broken:
        use = broken.pop()
        if use not in found:
            found.add(use)
            broken.extend(hanging.get(use, ()))
    return found
