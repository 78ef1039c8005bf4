"""Programs that a test needs beside Python: where one is missing, the test skips and says what to install."""

import shutil
import subprocess
import sys
from functools import cache
from pathlib import Path

import pytest

CHROMIUM = "/usr/bin/chromium"


def needs(program: str, package: str) -> pytest.MarkDecorator:
    """Skips where `program` is not on the path; `package` is the name that Debian has for it."""
    return pytest.mark.skipif(shutil.which(program) is None, reason=f"{program} is missing: install {package}")


@cache
def no_browser() -> str:
    """Why no screen can be opened here and what to install; `` where one can."""
    if not Path(CHROMIUM).exists():
        return f"{CHROMIUM} is missing: install chromium"
    driver = subprocess.run(
        [sys.executable, "-m", "playwright", "--version"], capture_output=True, text=True, check=False
    )
    if driver.returncode:
        return f"the browser's driver does not start: install libatomic1 ({driver.stderr.strip()})"
    return ""


def pdf_text(path: Path, layout: bool = True) -> str:
    """The text of a PDF as `pdftotext` reads it, as it lies on the page or cell by cell; skips where its data for Chinese are
    missing and the file needs them."""
    order = ["-layout"] if layout else []
    run = subprocess.run(["pdftotext", *order, str(path), "-"], capture_output=True, text=True, check=True)
    if "language pack" in run.stderr:
        pytest.skip(f"pdftotext lacks its data for Chinese: install poppler-data ({run.stderr.splitlines()[0]})")
    return run.stdout
