"""How fast a warp is used: from picks a minute, efficiency, pick density and take-up to metres an hour."""

from dataclasses import dataclass

from tracker.domain.mill import Article, Loom, Mill, Warp
from tracker.errors import DataError


@dataclass(frozen=True, slots=True)
class Rate:
    """Metres per running hour, both above 0."""

    cloth_m_per_h: float
    warp_m_per_h: float


def cloth_rate_m_per_h(speed_ppm: float, efficiency: float, pick_density_per_cm: float) -> float:
    """q = n·60·η / (100·p): picks an hour over picks per metre of cloth."""
    return speed_ppm * 60 * efficiency / (100 * pick_density_per_cm)


def warp_rate_m_per_h(cloth_m_per_h: float, take_up: float, basis: str) -> float:
    """Warp used per hour: q·(1+t) where take-up is measured on the cloth (crimp), q/(1−t) where on the warp
    (contraction)."""
    return cloth_m_per_h / (1 - take_up) if basis == "contraction" else cloth_m_per_h * (1 + take_up)


def rate_of(
    mill: Mill, loom: Loom, warp: Warp, speed_ppm: float | None = None, efficiency: float | None = None
) -> Rate:
    """The rate of a warp on a loom. A reading's speed and efficiency come before the warp's, those before the loom's.

    Raises DataError naming loom, warp, article and value where the rate cannot be worked out.
    """
    article = _article(mill, warp)
    speed = _first_known(speed_ppm, warp.speed_ppm, loom.speed_ppm)
    share = _first_known(efficiency, warp.efficiency, loom.efficiency)
    _check_article(warp, article)
    _check(warp, "speed", speed, " picks/min", 0, None)
    _check(warp, "efficiency", share, "", 0, 1)
    assert speed is not None and share is not None
    cloth = cloth_rate_m_per_h(speed, share, article.pick_density_per_cm)
    return Rate(cloth, warp_rate_m_per_h(cloth, article.take_up, article.take_up_basis))


def where(warp: Warp) -> str:
    return f"loom {warp.key}, warp {warp.sequence}, article {warp.article}"


def _article(mill: Mill, warp: Warp) -> Article:
    article = mill.articles.get(warp.article)
    if article is None:
        raise DataError(f"{where(warp)}: the article is not in the list of articles; add it or correct the warp")
    return article


def _check_article(warp: Warp, article: Article) -> None:
    _check(warp, "pick density", article.pick_density_per_cm, " picks/cm", 0, None)
    if not 0 <= article.take_up < 1:
        raise DataError(f"{where(warp)}: take-up {article.take_up:.1%} must be at least 0 % and below 100 %")
    if article.take_up_basis not in ("crimp", "contraction"):
        raise DataError(f"{where(warp)}: take-up basis '{article.take_up_basis}' must be crimp or contraction")


def _check(warp: Warp, what: str, value: float | None, unit: str, above: float, most: float | None) -> None:
    if value is None:
        raise DataError(f"{where(warp)}: no {what} given with the reading, the warp or the loom; give one of them")
    if not value > above or (most is not None and value > most):
        limit = f"above {above:g}" + (f" and at most {most:g}" if most is not None else "")
        raise DataError(f"{where(warp)}: {what} {value:g}{unit} must be {limit}{unit}")


def _first_known(*values: float | None) -> float | None:
    return next((value for value in values if value is not None), None)
