"""A folder in no repository, wherever the tests are run."""


def arrange(folder, monkeypatch):
    monkeypatch.setenv("GIT_CEILING_DIRECTORIES", str(folder.resolve().parent))
