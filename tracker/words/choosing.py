"""Which language somebody is spoken to: as chosen on a page, else as the browser asks for, else English."""

from tracker.words.catalogue import LANGUAGES, codes

SPOKEN = tuple(language for language in LANGUAGES if "just" in codes(language))
"""Those that say more than the fixed words of a card."""
ASKED, KEPT = "lang", "beamslot-language"
"""The name by which an address asks for a language, and that of the cookie which keeps it."""
KEPT_S = 365 * 24 * 3600


def chosen(*asked: str | None, accepts: str = "") -> str:
    """The first of those asked for that is spoken, else of the browser's own (`de-AT,de;q=0.9`, RFC 9110, 12.5.4)."""
    wished = [*asked, *_by_preference(accepts)]
    return next((language for language in wished if language in SPOKEN), "en")


def _by_preference(accepts: str) -> list[str]:
    """The languages without their countries, the dearest first; what is no line of languages asks for none."""
    found = []
    for one in accepts.split(","):
        name, _, weight = one.partition(";q=")
        try:
            found.append((-float(weight or 1), name.strip().partition("-")[0].lower()))
        except ValueError:
            continue
    return [name for weight, name in sorted(found, key=lambda each: each[0]) if weight < 0]
