"""A machine without Git."""


def arrange(folder, monkeypatch):
    monkeypatch.setattr("shutil.which", lambda name: None)
