"""The command line. All reading and writing of files is done in this folder."""

from __future__ import annotations

import atexit
import gc
import sys
from collections.abc import Sequence

from setout.cli.codes import BROKEN_PIPE, FAILED, INTERRUPTED

__all__ = ["main"]


def main(argv: Sequence[str] | None = None) -> int:
    """Run the command that `argv` (or else the process's own arguments) asks for. The exit code; nothing is raised."""
    gc.set_threshold(500_000, 20, 50)  # next to nothing that a command makes is garbage before it ends
    atexit.register(gc.freeze)  # nor is it worth looking for any then, as Python would
    try:
        return _run(sys.argv[1:] if argv is None else list(argv))
    except KeyboardInterrupt:
        return INTERRUPTED
    except BrokenPipeError:
        _close_quietly()
        return BROKEN_PIPE
    except Exception as fault:  # a fault of setout's own: say so, without a traceback
        return _failed(fault)


def _run(argv: list[str]) -> int:
    from setout.cli.arguments import parsed

    for stream in (sys.stdout, sys.stderr):
        if hasattr(stream, "reconfigure"):
            stream.reconfigure(errors="replace")
    try:
        given = parsed(argv)
    except SystemExit as leaving:  # argparse has printed its help, its version or what is wrong
        code = leaving.code if isinstance(leaving.code, int) else FAILED
    else:
        code = given.run(given)
    sys.stdout.flush()  # here, where it can still be caught that nobody reads it
    return code


def _failed(fault: Exception) -> int:
    import os

    from setout.cli.fault import report

    if os.environ.get("SETOUT_DEBUG"):
        raise fault
    try:
        sys.stderr.write(report(fault))
        sys.stderr.flush()
    except OSError:
        pass
    return FAILED


def _close_quietly() -> None:
    """Whoever read our output has gone: keep the interpreter from complaining about it while it shuts down."""
    import os

    null = os.open(os.devnull, os.O_WRONLY)
    for stream in (sys.stdout, sys.stderr):
        try:
            os.dup2(null, stream.fileno())
        except (OSError, ValueError):
            pass
