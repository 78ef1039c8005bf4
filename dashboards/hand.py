"""What the pieces of an open card work with, looked up once for each run of the screen."""

from dataclasses import dataclass

from tracker.services.context import Context
from tracker.services.screens.work_card import WorkCard
from tracker.services.work.at_the_loom import AtLoom


@dataclass(frozen=True, slots=True)
class Hand:
    context: Context
    work: WorkCard
    here: AtLoom
