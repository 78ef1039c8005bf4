"""Invented crews, tools and terms of the programme."""

from datetime import date, time

from tracker.domain.mill import Absence, Crew, Overtime, Tool
from tracker.domain.terms import Terms

WORKDAYS = frozenset(range(5))
SHIFTS = ((time(6), time(14)), (time(9), time(17)))
"""Early and late crew: the mill converts from 06:00 to 17:00, with both crews in the hall from 09:00 to 14:00. A third one is
lent by the spinning mill from the third week on."""

CREWS = (
    Crew("Fitters 1", "fitter", 2, WORKDAYS, *SHIFTS[0], 34.0),
    Crew("Fitters 2", "fitter", 2, WORKDAYS, *SHIFTS[1], 34.0),
    Crew("Fitters 3", "fitter", 2, WORKDAYS, *SHIFTS[0], 36.0, from_on=date(2027, 1, 18)),
    Crew("Electricians", "electrician", 2, WORKDAYS, time(7, 30), time(16), 39.0),
    Crew("Bench", "assistant", 1, WORKDAYS, time(7), time(15), 27.0),
)

ABSENCES = (
    Absence("Fitters 2", date(2027, 2, 15), date(2027, 2, 19), reason="holiday"),
    Absence("Fitters 1", date(2027, 1, 21), date(2027, 1, 21), 1, "training"),
    Absence("Electricians", date(2027, 3, 1), date(2027, 3, 5), 1, "holiday"),
)
"""A week without the late crew, a day on which the early one is too few for a conversion, a week with one electrician."""

OVERTIME = (
    Overtime("Fitters 1", date(2027, 2, 13), time(6), time(12)),
    Overtime("Electricians", date(2027, 2, 13), time(7), time(12)),
)
"""The Saturday before that week."""

TOOLS = {tool.tool: tool for tool in (Tool("drilling jig", 1), Tool("hoist", 1))}

TERMS = Terms(
    programme="Leno conversion of halls 1 and 2 (invented)",
    time_zone="Europe/Vienna",
    currency="EUR",
    start=date(2027, 1, 4),
    horizon_days=84,
    target_finish=date(2027, 3, 26),
    firm_h=72,
    patience_h=2,
    allowance=0.15,
    learning_rate=1.0,
    learning_floor=0.55,
    left_over_penalty=5000,
    soak_days=7,
    lead_trade="fitter",
    looms_stopped_at_once=3,
    stopped_per_section=1,
    day_to_day_variation=0.04,
    leno_yarn_tex=12,
    leno_yarn_price_per_kg=9.8,
    minutes_per_stop=4,
    pilots={"AJ-N": "007", "RP-N": "R-04"},
)
