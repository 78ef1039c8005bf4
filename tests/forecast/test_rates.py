import pytest

from tracker.domain.mill import Article, Loom, Mill, Warp
from tracker.errors import DataError
from tracker.forecast.rates import rate_of
from tracker.words import ENGLISH

LOOM = Loom("Hall 1", "007", "AJ", speed_ppm=600, efficiency=0.9)
WARP = Warp("Hall 1", "007", 0, "A-12", 3000)


def mill(article: Article | None) -> Mill:
    return Mill({LOOM.key: LOOM}, {LOOM.key: (WARP,)}, articles={article.article: article} if article else {})


def test_crimp_and_contraction_use_more_warp_than_cloth() -> None:
    # 600 · 60 · 0.9 / (100 · 20) = 16.2 m/h of cloth; · 1.08 = 17.496, / 0.92 = 17.6087
    crimp = rate_of(mill(Article("A-12", 20, 0.08)), LOOM, WARP)
    assert crimp.cloth_m_per_h == pytest.approx(16.2)
    assert crimp.warp_m_per_h == pytest.approx(17.496)
    contraction = rate_of(mill(Article("A-12", 20, 0.08, "contraction")), LOOM, WARP)
    assert contraction.warp_m_per_h == pytest.approx(17.6087, abs=1e-4)


def test_a_reading_comes_before_the_warp_and_the_warp_before_the_loom() -> None:
    m = mill(Article("A-12", 20, 0.0))
    slow = Warp("Hall 1", "007", 0, "A-12", 3000, speed_ppm=500, efficiency=0.8)
    assert rate_of(m, LOOM, slow).cloth_m_per_h == pytest.approx(500 * 60 * 0.8 / 2000)
    assert rate_of(m, LOOM, slow, speed_ppm=400).cloth_m_per_h == pytest.approx(400 * 60 * 0.8 / 2000)
    assert rate_of(m, LOOM, slow, efficiency=0.5).cloth_m_per_h == pytest.approx(500 * 60 * 0.5 / 2000)


def test_an_unknown_article_is_named() -> None:
    with pytest.raises(DataError) as error:
        rate_of(mill(None), LOOM, WARP)
    assert ENGLISH.line(error.value) == (
        "loom 007 (Hall 1), warp 0, article A-12: the article is not in the list of articles; add it or correct the warp"
    )


@pytest.mark.parametrize(
    ("article", "loom", "says"),
    [
        (Article("A-12", 0, 0.08), LOOM, "pick density 0 picks/cm must be above 0 picks/cm"),
        (Article("A-12", float("nan"), 0.08), LOOM, "pick density nan picks/cm must be above 0 picks/cm"),
        (Article("A-12", 20, 1.0), LOOM, "take-up 100 % must be at least 0 % and below 100 %"),
        (Article("A-12", 20, -0.05), LOOM, "take-up -5 % must be at least 0 % and below 100 %"),
        (Article("A-12", 20, 0.05, "both"), LOOM, "take-up basis 'both' must be crimp or contraction"),
        (Article("A-12", 20, 0.08), Loom("Hall 1", "007", "AJ", efficiency=0.9), "no speed given"),
        (Article("A-12", 20, 0.08), Loom("Hall 1", "007", "AJ", speed_ppm=600), "no efficiency given"),
        (
            Article("A-12", 20, 0.08),
            Loom("Hall 1", "007", "AJ", speed_ppm=600, efficiency=0.0),
            "efficiency 0 must be above 0 and at most 1",
        ),
        (Article("A-12", 20, 0.08), Loom("Hall 1", "007", "AJ", speed_ppm=600, efficiency=88), "efficiency 88 must be"),
    ],
)
def test_impossible_values_name_loom_warp_article_and_value(article: Article, loom: Loom, says: str) -> None:
    with pytest.raises(DataError) as error:
        rate_of(mill(article), loom, WARP)
    assert ENGLISH.line(error.value).startswith("loom 007 (Hall 1), warp 0, article A-12: ")
    assert says in ENGLISH.line(error.value)
