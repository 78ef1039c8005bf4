"""Ctrl-C asks long work to stop with what it has; the second one ends the command."""

import os
import signal
import threading

import pytest

from tracker.cli import show


def press():
    os.kill(os.getpid(), signal.SIGINT)


def test_the_first_asks_and_the_second_ends(capsys):
    stopped, before = threading.Event(), signal.getsignal(signal.SIGINT)
    with pytest.raises(KeyboardInterrupt), show.interrupt(stopped):
        press()
        assert stopped.is_set()
        press()
    assert signal.getsignal(signal.SIGINT) is before


def test_without_it_all_is_as_before():
    stopped, before = threading.Event(), signal.getsignal(signal.SIGINT)
    with show.interrupt(stopped):
        pass
    assert not stopped.is_set() and signal.getsignal(signal.SIGINT) is before
