"""A repository that has another file."""

import subprocess


def arrange(folder, monkeypatch):
    (folder / "other.rod").write_text("# nothing\n")
    who = ["-c", "user.name=A builder", "-c", "user.email=builder@example.org", "-c", "commit.gpgsign=false"]
    for words in (["init", "-q"], ["add", "other.rod"], [*who, "commit", "-q", "-m", "one"]):
        subprocess.run(["git", "-C", str(folder), *words], check=True)
