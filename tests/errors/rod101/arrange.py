"""A file of 16-bit text."""


def arrange(folder, monkeypatch):
    spec = folder / "spec.rod"
    spec.write_bytes(spec.read_text("utf-8").encode("utf-16"))
