"""Metres left on the bobbins of a loom, left against right, and against the metres to its beam-out."""

from dataclasses import dataclass

LENO_PER_CLOTH = 1.25
"""Metres of leno yarn that a metre of cloth takes; usual practice 1.1 to 1.4."""


def metres_left(grams: float, tex: float) -> float:
    """tex is grams per 1,000 m (ISO 1144); ValueError below 0 g or at 0 tex."""
    if grams < 0 or tex <= 0:
        raise ValueError(f"{grams} g of {tex} tex")
    return grams * 1000 / tex


@dataclass(frozen=True, slots=True)
class Bobbins:
    """Of one loom; None where a side was not weighed."""

    left_m: float | None
    right_m: float | None

    @property
    def left_more_m(self) -> float | None:
        """Left less right."""
        return None if self.left_m is None or self.right_m is None else self.left_m - self.right_m

    def cloth_to_change_m(self, leno_per_cloth: float = LENO_PER_CLOTH) -> float | None:
        """Metres of cloth until the first of them is empty."""
        known = [m for m in (self.left_m, self.right_m) if m is not None]
        return min(known) / leno_per_cloth if known else None

    def last_to_beam_out(self, cloth_to_beam_out_m: float, leno_per_cloth: float = LENO_PER_CLOTH) -> bool | None:
        """Whether no bobbin has to be changed before the warp runs out; None where none was weighed."""
        cloth_m = self.cloth_to_change_m(leno_per_cloth)
        return None if cloth_m is None else cloth_m >= cloth_to_beam_out_m
