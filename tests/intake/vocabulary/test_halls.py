"""Halls and rows named by titles, section lines and sheet names; and lines that name none."""

import pytest

from tracker.intake.layout.body import says_total
from tracker.intake.vocabulary.halls import hall_in, row_in


@pytest.mark.parametrize(
    ("text", "hall"),
    [
        ("SALON A", "SALON A"), ("Halle B", "Halle B"), ("一车间", "一车间"), ("一车间（40台）", "一车间"), ("2号车间", "2号车间"),
        ("Weaving shed 2", "Weaving shed 2"), ("Hall: 1", "Hall 1"), ("Websaal II", "Websaal II"), ("Nordhalle", "Nordhalle"),
        ("Halle Nord", "Halle Nord"), ("1. Salon", "1. Salon"), ("Salle 2 - jet d'air", "Salle 2"), ("Hall 1 (32 looms)", "Hall 1"),
        ("Nave N1", "Nave N1"), ("B salonu", "B salonu"), ("Lista Galpão 2", "Galpão 2"), ("Halle_1", "Halle 1"),
        ("SALON-1", "SALON-1"), ("Halle1", "Halle1"),
        ("Sala tessitura 3", "Sala tessitura 3"),
    ],
)  # fmt: skip
def test_named(text, hall):
    assert hall_in(text) == hall


@pytest.mark.parametrize(
    "text",
    ["Weberei Quarzbach", "Maschinenliste Websaal, Stand 14.03.2026", "LISTA DE TEARES", "Total", "Halle", "Weaving hall",
     "Maschinenliste Halle 1 und 2", "Hall 1-3", "Sheds 1 & 2", "织机台账", "AJ-190", "Loom list 2026"],
)  # fmt: skip
def test_not_named(text):
    assert hall_in(text) is None


def test_rows():
    assert [row_in(t) for t in ("Reihe 3", "Row 12", "Rangée 2", "第", "Halle 3")] == ["3", "12", "2", None, None]


@pytest.mark.parametrize(
    "text",
    ["Total", "Summe Halle A", "Hall 1 total", "à reporter", "Riporto", "a transportar", "合计", "小计：6", "Ø", "Σ",
     "Average speed", "Gesamt: 72 Webmaschinen", "Grand total", "Ara toplam", "Suma y sigue"],
)  # fmt: skip
def test_sums(text):
    assert says_total(text)


@pytest.mark.parametrize("text", ["A-07", "T-1", "Totalizer 3", "001", "Halle A", "合"])
def test_no_sums(text):
    assert not says_total(text)
