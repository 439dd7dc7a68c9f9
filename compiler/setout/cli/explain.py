"""`setout explain`: a code's page, or all the codes in a list."""

from __future__ import annotations

import sys
from argparse import Namespace

from setout.cli.codes import CLEAN, USAGE
from setout.cli.terminal import shown
from setout.diagnostics.catalogue import CODES, codes, page
from setout.diagnostics.suggest import did_you_mean


def run(given: Namespace) -> int:
    if given.code is None:
        for entry in codes():
            print(f"{entry.code} {entry.severity.value}: {entry.title}")
        return CLEAN
    code = given.code.lower() if not given.code.isdigit() else f"rod{given.code}"
    text = page(code)
    if text is None:
        hint = did_you_mean(code, CODES)
        print(
            f"setout explain: there is no code {shown(given.code)}; {hint or 'explain alone lists them'}",
            file=sys.stderr,
        )
        return USAGE
    sys.stdout.write(text)
    return CLEAN
