"""How finely and up to how much a part is counted: its unit decides, here and nowhere else.

A quantity is a decimal number, a multiple of its unit's step. Up to `MOST` such numbers and their sums differ from the
nearest float by far less than half a millionth, so that `tidy` gives the exact decimal back.
"""

from decimal import Decimal
from math import isfinite

from tracker.domain.words import fold
from tracker.errors import Message, message

MOST = 10_000_000
"""Of any part in one entry, in one row or on hand."""
FINE = Decimal("0.001")
"""Step of what is measured or weighed, and where no unit is given."""
_WHOLE = frozenset(
    fold(word) for word in (
        "pc", "pcs", "pce", "pces", "piece", "pieces", "ea", "each", "set", "sets", "pair", "pairs", "stk", "stück", "st",
        "paar", "satz", "pièce", "pièces", "paire", "jeu", "pz", "pezzo", "pezzi", "coppia", "ud", "uds", "unidad", "unidades",
        "pieza", "piezas", "par", "pares", "juego", "un", "und", "unidade", "peça", "peças", "jogo", "adet", "ad", "çift", "takım",
        "个", "件", "只", "张", "台", "套", "对",
    )
)  # fmt: skip


def whole(unit: str | None) -> bool:
    """Whether a unit is counted in whole ones: pieces, sets, pairs."""
    return fold(unit or "").rstrip(".") in _WHOLE


def tidy(quantity: float) -> float:
    """The quantity without the dust of binary fractions: 8.200000000000001 → 8.2."""
    return round(quantity, 6) + 0.0


def fault(quantity: float, unit: str | None) -> Message | None:
    """What is wrong with a quantity, as in `is finer than 0.001 m`; None where nothing is."""
    if not isfinite(quantity):
        return message("quantity-no-number")
    if abs(quantity) > MOST:
        return message("quantity-above-most", most=MOST, unit=unit or None)
    exact = Decimal(repr(tidy(quantity))) if abs(quantity) >= 1e-6 else Decimal(repr(quantity))
    if whole(unit):
        return None if exact == exact.to_integral_value() else message("quantity-not-whole", unit=unit)
    return None if exact % FINE == 0 else message("quantity-too-fine", step=float(FINE), unit=unit or None)
