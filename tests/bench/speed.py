"""How long the commands take, each in a new process, against what a builder will wait for.

python tests/bench/speed.py [SPEC]
"""

from __future__ import annotations

import os
import resource
import shutil
import subprocess
import sys
import tempfile
import time
from pathlib import Path

SPEC = Path(__file__).parents[2] / "specs" / "sewing_wall.rod"
RUNS = 3  # the quickest counts: what else the machine does is not ours
MEASURED = (
    ("setout --help", 0.2, ("--help",)),
    ("check", 0.5, ("check", "SPEC")),
    ("build without PDF", 1.5, ("build", "SPEC", "--format", "html,csv,json,svg")),
    ("build with PDF", 12.0, ("build", "SPEC")),
)


def main(spec: Path) -> int:
    late = 0
    print(f"{spec.name}: the quickest of {RUNS} runs, in seconds (cpu: what the machine's other work adds is left out)")
    for name, target, words in MEASURED:
        taken, cpu = map(min, zip(*(seconds(words, spec) for _ in range(RUNS))))
        late += taken > target
        print(f"{name:<20}{taken:7.2f}   cpu {cpu:6.2f}   target {target:5.1f}   {'over' if taken > target else 'ok'}")
    return 1 if late else 0


def seconds(words: tuple[str, ...], spec: Path) -> tuple[float, float]:
    """The same as `timed`, beside a copy of the spec."""
    with tempfile.TemporaryDirectory() as folder:
        shutil.copytree(spec.parent, folder, dirs_exist_ok=True)
        return timed(tuple(spec.name if word == "SPEC" else word for word in words), folder)


def timed(words: tuple[str, ...], folder: str, codes: tuple[int, ...] = (0,)) -> tuple[float, float]:
    """The wall-clock and processor time of one run in a folder, which must end with one of these exit codes."""
    command = [sys.executable, "-m", "setout", *words]
    start, before = time.perf_counter(), resource.getrusage(resource.RUSAGE_CHILDREN)
    done = subprocess.run(command, cwd=folder, env=environment(), capture_output=True, text=True)
    taken, after = time.perf_counter() - start, resource.getrusage(resource.RUSAGE_CHILDREN)
    if done.returncode not in codes:
        raise SystemExit(f"{' '.join(command)} ended with {done.returncode}\n{done.stdout}{done.stderr}")
    return taken, after.ru_utime + after.ru_stime - before.ru_utime - before.ru_stime


def environment() -> dict[str, str]:
    """As a builder has it: Python keeps what it compiled of setout's own text, which an installation does once."""
    return {name: value for name, value in os.environ.items() if name != "PYTHONDONTWRITEBYTECODE"}


if __name__ == "__main__":
    sys.exit(main(Path(sys.argv[1]) if len(sys.argv) > 1 else SPEC))
