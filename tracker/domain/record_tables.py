"""The tables of what was done, declared as all others are. Their rows are history: a load adds to them and completes what a
row left empty, and refuses a row that says otherwise than one that is there."""

from tracker.domain.columns import Column, Kind, Pair, Table, loom_columns

T, I, W, N, Z, P, M = (Kind.TEXT, Kind.IDENTIFIER, Kind.WORD, Kind.NUMBER, Kind.INTEGER, Kind.FRACTION, Kind.MOMENT)  # noqa: E741

STAGES_REACHED = ("in work", "run-in", "signed off", "stopped")
WHYS = ("found", "set", "adjusted", "visit", "read out")
"""Why a setting was read: before the conversion, by it, changed since, at a follow-up visit, in passing."""
SIDES = ("left", "right")

_SIDE = Column("side", "Side", T, key=True, about="about-set-values-side", example="left")
_ARTICLE = Column("article", "Article", I, about="about-set-values-article", example="A-1207")
_WAIVED = (
    Column("waived_because", "Waived because", T, about="about-set-values-waived-because"),
    Column("waived_by", "Waived by", T, about="about-set-values-waived-by"),
    Column("waived_at", "Waived at", M, about="about-set-values-waived-at"),
)  # fmt: skip
_CARD = Column("card", "Card", I, key=True, about="about-work-done-card", example="C3-0042-X")

WORK_DONE = Table("work_done", "Work done", (
    *loom_columns(),
    _CARD,
    Column("operation", "Operation", T, key=True, about="about-work-done-operation"),
    Column("started_at", "Started", M, needed=True, unless="operation", key=True, example="2027-01-11 06:00",
           about="about-work-done-started"),
    Column("ended_at", "Ended", M, about="about-work-done-ended", example="2027-01-11 13:40"),
    Column("crew", "Crew", I, example="Fitters 1"),
    Column("stage", "Stage reached", W, needed=True, unless="operation", key=True, words=STAGES_REACHED, example="run-in",
           about="about-work-done-stage-reached"),
    Column("beam_out_at", "Beam-out", M, example="2027-01-11 05:50"),
    Column("locked_at", "Locked", M, example="2027-01-11 06:10"),
    Column("unlocked_at", "Unlocked", M, example="2027-01-11 12:30"),
    Column("first_pick_at", "First pick", M, example="2027-01-11 13:00"),
    Column("at_speed_at", "At speed", M, example="2027-01-11 13:40"),
    Column("minutes", "Minutes", N, unit="min", low=0, high=10000, example="45",
           about="about-work-done-minutes"),
    Column("heads", "Heads", Z, low=0, high=100, example="2"),
    Column("torque_nm", "Torque read", N, unit="N·m", low=0, high=5000, example="40"),
    Column("done_by", "Done by", T, about="about-work-done-done-by"),
    Column("remark", "Remark", T),
    Column("hand_over", "Hand over", T, about="about-work-done-hand-over"),
), "about-sheet-work-done", history=True, filled_by=(
    "started_at", "ended_at", "stage", "beam_out_at", "locked_at", "unlocked_at", "first_pick_at", "at_speed_at", "minutes",
    "torque_nm", "done_by", "remark", "hand_over",
), pairs=(
    Pair("started_at", "<", "ended_at"), Pair("locked_at", "<", "unlocked_at"), Pair("unlocked_at", "<=", "first_pick_at"),
    Pair("first_pick_at", "<=", "at_speed_at"), Pair("started_at", "<=", "locked_at"),
))  # fmt: skip

SET_VALUES = Table("set_values", "Set values", (
    *loom_columns(),
    _SIDE,
    Column("setting", "Setting", T, needed=True, key=True, example="crossing angle"),
    Column("value", "Value", Kind.ANY, needed=True, unless="waived_because", example="310"),
    Column("at", "At", M, needed=True, key=True, example="2027-01-11 13:20"),
    Column("who", "Who", T, example="M. Berg"),
    Column("why", "Why", W, key=True, words=WHYS, about="about-set-values-why", example="set"),
    _ARTICLE,
    *_WAIVED,
), "about-sheet-set-values", history=True,
    filled_by=("value", "waived_because"))  # fmt: skip

CHECK_RESULTS = Table("check_results", "Check results", (
    *loom_columns(),
    _SIDE,
    Column("check", "Check", T, needed=True, key=True, example="guards refitted"),
    Column("result", "Result", Kind.ANY, needed=True, unless="waived_because", about="about-check-results-result", example="yes"),
    Column("at", "At", M, needed=True, key=True, example="2027-01-11 13:30"),
    Column("who", "Who", T, example="M. Berg"),
    *_WAIVED,
), "about-sheet-check-results", history=True, filled_by=("result", "waived_because"))  # fmt: skip

PARTS_USED = Table("parts_used", "Parts used", (
    *loom_columns(),
    _CARD,
    Column("part", "Part", I, needed=True, key=True, example="RAIL-190"),
    Column("used", "Used", N, needed=True, low=0, about="about-parts-used-used", example="1"),
    Column("left_over", "Left over", N, low=0, about="about-parts-used-left-over", example="0"),
    Column("broken", "Broken", N, low=0, about="about-parts-used-broken", example="0"),
), "about-sheet-parts-used", history=True, filled_by=("used", "left_over", "broken"))  # fmt: skip

STOPS = Table("stops", "Stops", (
    *loom_columns(),
    Column("from_at", "From", M, needed=True, key=True, example="2027-01-04 00:00"),
    Column("to_at", "To", M, needed=True, example="2027-01-11 00:00"),
    _ARTICLE,
    Column("cause", "Cause", T, key=True, about="about-stops-cause", example="weft"),
    Column("stops", "Stops", Z, needed=True, low=0, high=1_000_000, example="31"),
    Column("picks", "Picks", N, needed=True, low=0, high=100_000_000_000, about="about-stops-picks",
           example="812000"),
    Column("hours_h", "Hours", N, unit="h", low=0, high=100_000, about="about-stops-hours", example="2.5"),
    Column("efficiency", "Efficiency", P, low=0, high=1, example="88"),
), "about-sheet-stops", history=True,
    pairs=(Pair("from_at", "<", "to_at"), Pair("stops", "<=", "picks")))  # fmt: skip

WASTE = Table("waste", "Waste", (
    *loom_columns(),
    Column("from_at", "From", M, needed=True, key=True, example="2027-01-04 00:00"),
    Column("to_at", "To", M, needed=True, example="2027-01-11 00:00"),
    _SIDE,
    Column("waste_width_mm", "Waste width", N, needed=True, unit="mm", low=0, high=1000, example="62"),
    _ARTICLE,
), "about-sheet-waste", history=True, pairs=(Pair("from_at", "<", "to_at"),))  # fmt: skip

BOBBINS = Table("bobbins", "Bobbins", (
    *loom_columns(),
    Column("side", "Side", W, needed=True, key=True, words=SIDES, example="left"),
    Column("at", "At", M, needed=True, key=True, example="2027-01-18 06:00"),
    Column("grams_left", "Grams left", N, needed=True, unit="g", low=0, high=100_000, example="640"),
    Column("tex", "Tex", N, low=0.1, high=10_000, about="about-bobbins-tex", example="12"),
), "about-sheet-bobbins", history=True, filled_by=("grams_left",))  # fmt: skip

RECORD_TABLES = (WORK_DONE, SET_VALUES, CHECK_RESULTS, PARTS_USED, STOPS, WASTE, BOBBINS)
RECORDS = tuple(table.name for table in RECORD_TABLES)
