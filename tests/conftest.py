"""What all tests share: `--update` rewrites the expected texts, `--prune` drops those that nothing makes any more."""

from __future__ import annotations

from pathlib import Path

import pytest

TESTS = Path(__file__).parent
REPO = TESTS.parent


def pytest_addoption(parser: pytest.Parser) -> None:
    parser.addoption("--update", action="store_true", help="rewrite expected outputs; review the diff")
    parser.addoption("--prune", action="store_true", help="remove expected outputs that no run makes")


class Expected:
    """Compares what a run made with a file beside the case, or rewrites the file under --update."""

    def __init__(self, update: bool, prune: bool) -> None:
        self.update = update
        self.prune = prune

    def same(self, made: str, file: Path) -> None:
        if self.update:
            file.parent.mkdir(parents=True, exist_ok=True)
            file.write_bytes(made.encode())
        assert file.exists(), f"{file} is missing: look at what pytest --update writes there"
        assert made == file.read_bytes().decode(), f"{file} differs: if this is right, run pytest --update"

    def nothing_else(self, folder: Path, names: set[str]) -> None:
        """No file in the folder but these."""
        stray = sorted(p for p in folder.rglob("*") if p.is_file() and p.relative_to(folder).as_posix() not in names)
        if self.prune:
            for path in stray:
                path.unlink()
            return
        assert not stray, f"nothing makes {stray}: run pytest --prune"


@pytest.fixture
def expected(request: pytest.FixtureRequest) -> Expected:
    return Expected(request.config.getoption("--update"), request.config.getoption("--prune"))


@pytest.fixture(scope="session")
def repo() -> Path:
    return REPO
