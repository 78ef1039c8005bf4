"""How fast a warp is used: from picks a minute, efficiency, pick density and take-up to metres an hour."""

from dataclasses import dataclass

from tracker.domain.mill import Article, Loom, Mill, Warp
from tracker.domain.units import percent
from tracker.errors import DataError, message


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
    _check(warp, "speed", speed)
    _check(warp, "efficiency", share, most=1)
    assert speed is not None and share is not None
    cloth = cloth_rate_m_per_h(speed, share, article.pick_density_per_cm)
    return Rate(cloth, warp_rate_m_per_h(cloth, article.take_up, article.take_up_basis))


def fault(warp: Warp, code: str, /, **params: object) -> DataError:
    """What is wrong with a warp or its article, named with loom, warp and article."""
    what = message(code, **params)
    return DataError("warp-value", loom=warp.key, warp=str(warp.sequence), article=warp.article, what=what)


def _article(mill: Mill, warp: Warp) -> Article:
    article = mill.articles.get(warp.article)
    if article is None:
        raise fault(warp, "article-unlisted")
    return article


def _check_article(warp: Warp, article: Article) -> None:
    _check(warp, "pick-density", article.pick_density_per_cm)
    if not 0 <= article.take_up < 1:
        raise fault(warp, "take-up-impossible", percent=percent(article.take_up))
    if article.take_up_basis not in ("crimp", "contraction"):
        raise fault(warp, "take-up-basis-unknown", basis=article.take_up_basis)


def _check(warp: Warp, what: str, value: float | None, most: float | None = None) -> None:
    if value is None:
        raise fault(warp, "rate-value-missing", what=what)
    if not value > 0 or (most is not None and value > most):
        raise fault(warp, "rate-value-impossible", what=what, value=value)


def _first_known(*values: float | None) -> float | None:
    return next((value for value in values if value is not None), None)
