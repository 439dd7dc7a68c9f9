"""A scratch repository, kept from the settings of whoever runs the tests."""

from __future__ import annotations

import os
import subprocess
from collections.abc import Mapping
from pathlib import Path

import pytest


class Repository:
    """Git in one folder. `commit` takes file texts by name (None: the file goes) and says the commit's number."""

    def __init__(self, folder: Path, monkeypatch: pytest.MonkeyPatch) -> None:
        self.folder = folder
        for name in [name for name in os.environ if name.startswith("GIT_")]:
            monkeypatch.delenv(name)
        monkeypatch.setenv("GIT_CONFIG_GLOBAL", os.devnull)
        monkeypatch.setenv("GIT_CONFIG_SYSTEM", os.devnull)
        monkeypatch.setenv("GIT_CEILING_DIRECTORIES", str(folder.resolve().parent))
        self.git("init", "-q", "-b", "main")
        self.git("config", "user.name", "A builder")
        self.git("config", "user.email", "builder@example.org")

    def git(self, *words: str) -> str:
        done = subprocess.run(["git", "-C", str(self.folder), *words], capture_output=True, text=True, check=False)
        assert not done.returncode, done.stderr
        return done.stdout

    def commit(self, files: Mapping[str, str | None] = {}) -> str:
        for name, text in files.items():
            path = self.folder / name
            path.parent.mkdir(parents=True, exist_ok=True)
            if text is not None:
                path.write_text(text, "utf-8")
                continue
            path.unlink()
            if path.parent != self.folder:
                path.parent.rmdir()
        self.git("add", "-A")
        self.git("commit", "-q", "--allow-empty", "-m", "a revision")
        return self.git("rev-parse", "HEAD").strip()
