"""The weaver's note (A6): what is new on a converted loom, and whom to call."""

from reportlab.lib.units import mm
from reportlab.platypus import Flowable

from tracker.domain.cards import Card
from tracker.export.cards.paper import pair, ruled, small
from tracker.export.cards.words import CardWords

_WIDTH = 93 * mm
_BLANKS = ("card-note-thread", "card-note-yarn", "card-note-open", "card-note-call")


def note(card: Card, words: CardWords) -> list[Flowable]:
    """What stands on one note; lines to write on for what only the mill knows."""
    hazard = ruled([[small(words("card-note-moves"), 10, bold=True)]], [_WIDTH], heads=0)
    more = [small(f"– {words(code)}", 8.5) for code in ("card-note-crossing", "card-note-hands-off")]
    blanks = ruled([[small(words(code), 7, bold=True)] for code in _BLANKS], [_WIDTH], heads=0, low=12 * mm)
    return [
        small(f"{words('card-loom')} {card.key.loom}", 18, bold=True),
        small(card.key.hall, 9),
        small(words("card-note-title"), 11, bold=True),
        pair(words("card-note-when"), words.moment(card.booking.end), 8.5),
        hazard,
        *more,
        blanks,
    ]
