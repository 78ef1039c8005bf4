"""Numbers as texts, split into what they say in either convention and the unit beside them."""

import pytest

from tracker.intake.vocabulary.numbers import quantity


@pytest.mark.parametrize(
    ("text", "readings", "unit"),
    [
        ("1.234,5", {"comma": 1234.5}, ""), ("1,234.5", {"point": 1234.5}, ""),
        ("1.234", {"point": 1.234, "comma": 1234.0}, ""),
        ("1,234", {"point": 1234.0, "comma": 1.234}, ""), ("0.885", {"point": 0.885}, ""), ("82,5", {"comma": 82.5}, ""),
        ("1.234.567", {"comma": 1234567.0}, ""), ("12,34,567", {"point": 1234567.0}, ""), (".5", {"point": 0.5}, ""),
        ("1 050", {"point": 1050.0, "comma": 1050.0}, ""), ("1'050", {"point": 1050.0, "comma": 1050.0}, ""),
        ("1 234,5 m", {"comma": 1234.5}, "m"), ("190 cm", {"point": 190.0, "comma": 190.0}, "cm"),
        ('75"', {"point": 75.0, "comma": 75.0}, '"'),
        ("%88", {"point": 88.0, "comma": 88.0}, "%"), ("535 colpi/min", {"point": 535.0, "comma": 535.0}, "colpi/min"),
        ("500 1/min", {"point": 500.0, "comma": 500.0}, "1/min"),
        ("24 picks/10 cm", {"point": 24.0, "comma": 24.0}, "picks/10 cm"),
        ("-3", {"point": -3.0, "comma": -3.0}, ""), ("−3", {"point": -3.0, "comma": -3.0}, ""),
        ("3-", {"point": -3.0, "comma": -3.0}, ""),
        ("(3)", {"point": -3.0, "comma": -3.0}, ""), ("€ 310,00", {"comma": 310.0}, "€"),
        ("Rs. 500", {"point": 500.0, "comma": 500.0}, "Rs."),
    ],
)  # fmt: skip
def test_readings(text, readings, unit):
    found = quantity(text)
    assert found is not None and (found.readings, found.unit) == (readings, unit)


@pytest.mark.parametrize(
    "text", ["", "eight", "620/640", "8-12", "6 40", "620 (max 700)", "1.2.3", "1,2,3", "A-07", "8+2", "1.23.456"]
)
def test_no_single_number(text):
    assert quantity(text) is None


def test_about_is_said():
    found = quantity("ca. 190")
    assert found is not None and found.about and found.certain == 190
