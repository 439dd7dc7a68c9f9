"""A file of more than a million bytes."""


def arrange(folder, monkeypatch):
    with (folder / "spec.rod").open("a", encoding="utf-8") as spec:
        spec.write("# a long remark\n" * 65_000)
