"""A fault of our own, made on purpose."""

import importlib
import sys


def arrange(folder, monkeypatch):
    def broken(*_):
        raise KeyError("shelf")

    pipeline = importlib.import_module("setout.pipeline")
    monkeypatch.setattr(pipeline, "read", broken)
    monkeypatch.setattr(sys, "version", "3.x (any)")
    monkeypatch.setattr(sys, "platform", "anywhere")
    monkeypatch.setattr("setout.cli.fault.__version__", "0.x")
