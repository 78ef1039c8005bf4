"""What does not come right yet. A kind that has become right must leave these lists: the tests see to it."""

NOT_YET: tuple[str, ...] = ()
"""Traits of which some lists are not read right, or traits that go wrong together: `trait + trait`."""


def kinds_of(traits: tuple[str, ...]) -> list[str]:
    """The entries of NOT_YET that a list with these traits comes under."""
    return [kind for kind in NOT_YET if set(kind.split(" + ")) <= set(traits)]


FOUND_RIGHT = (
    "1.1 right-hand looms",
    "1.2 left looms' values",
    "4.1 headings below",
    "2.1 nominal and actual under one heading",
    "2.2 shifts under one heading",
    "2.3 Vitesse réelle beside Vitesse nominale",
    "2.4 Speed twice",
    "3.1 Vitesse (cp/min)",
    "3.2 Veloc. / pass/min",
    "3.3 M/c speed",
    "3.4 Avg. speed",
    "3.5 Rdt moyen",
    "3.6 Ort. randıman",
    "3.7 平均效率",
    "3.8 Speed 2026",
    "3.9 R/S (cm)",
    "3.10 N.E. %",
    "3.11 Schuss pro Minute",
    "3.12 Touren/min",
    "3.13 筘幅cm",
    "5.1 one odd byte",
    "5.2 daño in cp1252",
    "5.3 métier réglé in cp850",
    "5.4 huile ôtée in Mac Roman",
    "5.5 manutenção in Mac Roman",
    "5.6 così in cp850",
    "6.1 101-108",
    "6.2 a count by type",
    "6.3 North side and South side",
    "6.4 A–02 beside A-02",
    "6.5 B 3 beside B3",
    "6.6 'A019",
    "6.7 005*",
    "7.2 Protected until KW 12/27",
    "7.3 Protected until as a serial number",
    "7.1 attributes on a second sheet",
    "7.4 one 2x190",
    "7.7 06/1998",
    "7.8 2x190 throughout",
    "8.1 8.8 among 88s",
    "8.2 75 among 190s",
    "7.6 Ancho de tela",
    "7.5 Loss of efficiency %",
    "9.1 Inv.-Nr.",
    "9.6 type once per group",
    "9.7 type in section lines",
    '9.2 75 3/4"',
    '9.3 75½"',
    "9.4 190 (new reed)",
    "9.5 Min, Max and n",
    "9.8 M/c type",
    "9.9 L# and Shd",
    "11.1 loom 1/1 turned into a date",
)
"""Numbered cases that come right; all others do not yet."""
