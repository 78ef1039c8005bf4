"""Documents that the code cites are in the repository, and so are the files that a newcomer is shown."""

import re
import subprocess
from pathlib import Path

import pytest

ROOT = Path(__file__).parent.parent


def test_every_document_that_code_cites_is_there():
    listed = subprocess.run(["git", "ls-files"], cwd=ROOT, capture_output=True, text=True, check=False)
    if listed.returncode:
        pytest.skip("not a git checkout, so there is no list of the project's own files")
    names = listed.stdout.splitlines()
    documents = {Path(name).name for name in names if name.endswith(".md")}
    cited = {
        (cite, name)
        for name in names
        if name.endswith((".py", ".toml", ".ftl")) and (ROOT / name).exists()
        for cite in re.findall(r"\b[\w-]+\.md\b", (ROOT / name).read_text("utf-8"))
    }
    assert [found for found in sorted(cited) if found[0] not in documents] == []


def test_every_file_that_developers_are_shown_is_there():
    told = (ROOT / "DEVELOPERS.md").read_text("utf-8")
    shown = set(re.findall(r"`((?:tracker|dashboards|tests|sample_data)/[\w/.-]+)`", told))
    assert len(shown) > 20
    assert sorted(name for name in shown if not (ROOT / name).exists()) == []
