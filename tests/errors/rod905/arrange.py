"""A machine without Pango."""

import importlib


def arrange(folder, monkeypatch):
    def missing(*_):
        raise OSError("cannot load library 'libpangoft2-1.0-0'")

    monkeypatch.setattr(importlib.import_module("setout.write"), "write", missing)
