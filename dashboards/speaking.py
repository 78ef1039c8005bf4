"""Who says messages on the screens: with the advice of a screen, never with an option of the command."""

from tracker.words import Edge, Speaker

SPEAKER = Speaker(edge=Edge.SCREEN)
