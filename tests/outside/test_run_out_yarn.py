"""Yarn counts and yarn on a bobbin (SOURCES.md Y1–Y3)."""

import pytest

from tracker.domain.units import tex_from_denier, tex_from_ne, tex_from_nm, yarn_length_m


def test_the_count_table() -> None:
    """textileschool.com table: tex = 590.54/Ne = 1000/Nm = den/9 (seen), to 1e-4 of the value."""
    assert tex_from_ne(1) == pytest.approx(590.54, rel=1e-4)
    assert tex_from_nm(1) == pytest.approx(1000, rel=1e-4)
    assert tex_from_denier(9) == pytest.approx(1, rel=1e-4)


def test_counts_as_printed() -> None:
    """mapofsciences.com and a shawl-weaving training text (seen), each as rounded there."""
    assert round(tex_from_ne(30), 1) == 19.7
    assert round(tex_from_ne(20), 1) == 29.5  # the same reciprocal: 20 tex is Ne 29.5
    assert round(tex_from_nm(60), 2) == 16.67


def test_a_kilometre_of_20_tex_weighs_20_grams() -> None:
    """The same training text (seen); tex by ISO 1144 (from memory). 100 g of 30 tex: 100 × 1000 / 30 (computed)."""
    assert yarn_length_m(20, 20) == 1000
    assert yarn_length_m(100, 30) == pytest.approx(3333.3, abs=0.05)
