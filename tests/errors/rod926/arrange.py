"""A repository with nothing in it yet."""

import subprocess


def arrange(folder, monkeypatch):
    subprocess.run(["git", "init", "-q", str(folder)], check=True)
