"""Invented looms of invented mills: halls, machine types with their widths and speeds, numbers in the styles that mills use."""

import random
from collections.abc import Callable
from typing import Any

from .words import words

FIELDS = ("loom", "hall", "row", "place", "machine_type", "insertion", "year", "reed_width_cm", "frames", "speed_ppm",
          "efficiency", "protected_until", "notes")  # fmt: skip

NUMBERINGS = {
    "padded": lambda i: f"{i + 1:03d}",
    "letter": lambda i: f"A-{i + 1:02d}",
    "coded": lambda i: f"H2R{1 + i // 5}-{i + 1}",
    "slash": lambda i: f"{1 + i // 20}/{i + 14}",
    "spaced": lambda i: f"W {i + 1}",
    "tailed": lambda i: f"{i + 1}a",
    "counted": lambda i: f"{i + 1}",
    "thousands": lambda i: f"{1001 + i}",
}

WIDTHS = {
    "cm": (150.0, 190.0, 210.0, 220.0, 280.0, 340.0, 360.0),
    "inch": (66.5, 74.75, 75.0, 86.5, 110.25, 134.0, 141.75),
    "inch, or narrow looms in cm": (110.0, 118.0, 126.0, 134.0, 143.0),
}
"""Reed widths in the unit that the list writes; the last are as likely inch as cm."""


def make_mill(
    rng: random.Random,
    language: str,
    number: Callable[[int], str],
    widths: str = "cm",
    told: bool = False,
    fast: bool = False,
) -> list[dict[str, Any]]:
    """Looms of two halls as canonical records, one width for each type.

    `told`: the codes of the types name the width in cm; `fast`: all looms run above 1,000 picks/min.
    """
    said = words(language)
    types = _types(rng, widths, told and widths == "cm", fast)
    count = rng.randint(10, 16)
    looms = []
    for i in range(count):
        kind = types[i % len(types)] if i < len(types) else rng.choice(types)
        looms.append({
            "key": i, "loom": number(i), "hall": said["hall"].format(1 + 2 * i // count),
            "row": str(1 + i // 5), "place": str(1 + i % 5), "machine_type": kind["type"], "insertion": said[kind["insertion"]],
            "year": rng.randint(1994, 2024), "reed_width_cm": kind["width"], "frames": rng.choice((6, 8, 10, 12, 16)),
            "speed_ppm": float(rng.randrange(*kind["speeds"], 5)), "efficiency": rng.randrange(800, 960, 5) / 1000,
            "protected_until": None, "notes": rng.choice(said["notes"]) if rng.random() < 0.4 else None,
            "attributes": {},
        })  # fmt: skip
    return looms


def _types(rng: random.Random, widths: str, told: bool, fast: bool) -> list[dict[str, Any]]:
    """Two to four machine types."""
    found = []
    for width in rng.sample(WIDTHS[widths], rng.randint(2, 4)):
        air = fast or rng.random() < 0.5
        code = f"{'AJ' if air else 'RP'}-{width:g}" if told else f"{'KT'[air]}{len(found) + 4}"
        speeds = (1005, 1195) if fast else (560, 930) if air else (330, 620)
        found.append({"type": code, "insertion": "air" if air else "rapier", "speeds": speeds,
                      "width": width if widths == "cm" else width * 2.54})  # fmt: skip
    return found
