"""Words that say that a loom is no longer in the mill: `SOLD 2024`, `verschrottet`, `Verkauft`, `已报废`."""

from functools import lru_cache

from tracker.intake.vocabulary.dictionary import is_cjk, tokens, vocabulary


@lru_cache(maxsize=20_000)
def says_gone(text: str) -> bool:
    """Does a short text, figures and points aside, say nothing but that?"""
    words = [word for word in tokens(text) if not word.isdigit()] if len(text) <= 30 else []
    gone, fillers = vocabulary().words["gone"], vocabulary().fillers
    if is_cjk(text):
        return "".join(words).removeprefix("已") in gone
    said = [word for word in words if word in gone or word not in fillers]
    return " ".join(words) in gone or bool(said and all(word in gone for word in said))
