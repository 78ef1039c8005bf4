"""Who says messages on the screens: with the advice of a screen, never with an option of the command."""

from tracker.errors import message
from tracker.words import Edge, Speaker

SPEAKER = Speaker(edge=Edge.SCREEN)


def say(code: str, /, **params: object) -> str:
    """The words of a code, without advice: a label, a heading, a help."""
    return SPEAKER.say(message(code, **params))
