"""The marks lead out of the spec's folder."""


def arrange(folder, monkeypatch):
    (folder / "spec.marks").symlink_to("../elsewhere.marks")
