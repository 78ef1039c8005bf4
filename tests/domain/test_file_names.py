"""File names from outside show what they are."""

import pytest

from tracker.domain.file_names import file_name


@pytest.mark.parametrize(
    ("given", "kept"),
    [
        ("our list", "our list"),
        ("Kettenliste 2027, Überblick (neu)", "Kettenliste 2027, Überblick (neu)"),
        ("织机清单", "织机清单"),
        ("قائمة الأنوال", "قائمة الأنوال"),
        ("list\u202excod.exe", "listxcod.exe"),  # shows as `listexe.docx` where the mark is kept
        ("\u200flooms\u2066\u2069\ufeff", "looms"),
        ("looms\r\nSet-Cookie: a\x00\x1b[2J\x85", "looms Set-Cookie a [2J"),
        ("..\\..\\etc/passwd", "etc passwd"),
        ("a" * 300, "a" * 80),
        ("\u202e", "file"),
        (" . ", "file"),
        ("\udc80", "file"),
    ],
)
def test_what_a_file_name_keeps(given, kept):
    assert file_name(given, "file") == kept
