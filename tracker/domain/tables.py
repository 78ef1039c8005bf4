"""The tables that a mill gives us, declared once: reading, writing, comparing and storing all follow this list."""

from tracker.domain.columns import Column, Kind, Pair, Table, loom_columns
from tracker.domain.record_tables import RECORD_TABLES

T, I, W, N, Z, P, Y, D, M, H, G = (Kind.TEXT, Kind.IDENTIFIER, Kind.WORD, Kind.NUMBER, Kind.INTEGER, Kind.FRACTION, Kind.YES_NO, Kind.DATE, Kind.MOMENT, Kind.TIME, Kind.WEEKDAYS)  # noqa: E741  # fmt: skip


_SPEED = Column("speed_ppm", "Speed", N, unit="picks/min", low=20, high=2500, example="640")
_EFFICIENCY = Column("efficiency", "Efficiency", P, low=0.01, high=1.0, example="88")

CARD_LANGUAGES = ("de", "en", "es", "fr", "it", "pt", "tr", "zh")
"""Languages in which the fixed words of a card are there, by ISO 639-1."""

LOOMS = Table("looms", "Looms", (
    *loom_columns(needed_hall=True),
    Column("row", "Row", I, example="3"),
    Column("place", "Place", I, example="12"),
    Column("section", "Section", I, about="The looms that one weaver minds.", example="S4"),
    Column("machine_type", "Machine type", T, needed=True, about="The mill's own code for make and model.", example="AJ-190"),
    Column("insertion", "Insertion", T, example="air-jet"),
    Column("year", "Year", Z, low=1900, about="Year built; not in the future.", example="2012"),
    Column("reed_width_cm", "Reed width", N, unit="cm", low=30, high=1200, example="190"),
    Column("frames", "Frames", Z, low=1, high=40, example="8"),
    _SPEED,
    _EFFICIENCY,
    Column("saving_per_day", "Saving per day", N, low=0, about="Currency a day once converted.", example="11.50"),
    Column("capacity_unsold", "Capacity unsold", Y, about="Yes: a stopped hour costs no contribution.", example="no"),
    Column("protected_until", "Protected until", D, about="No conversion before or on this day.", example="2027-02-14"),
    Column("notes", "Notes", T),
), "The looms of the hall. Any other column is kept as an attribute under its own heading.", open_columns="attributes")  # fmt: skip

WARPS = Table("warps", "Warps", (
    *loom_columns(),
    Column("sequence", "Sequence", Z, needed=True, key=True, low=0, high=99, about="0 = on the loom now.", example="0"),
    Column("article", "Article", I, needed=True, example="A-1207"),
    Column("set_length_m", "Set length", N, unit="m", low=1, high=60000, example="3000"),
    Column("warp_left_m", "Warp left", N, unit="m", low=0, high=60000, example="1240"),
    Column("read_at", "Read at", M, about="When the warp left was read; local time.", example="2027-01-04 06:00"),
    Column("tail_m", "Tail", N, unit="m", low=0, high=500, about="The last metres that cannot be woven.", example="8"),
    Column("change", "Change", W, words=("repeat", "style"), about="How this warp comes in.", example="repeat"),
    _SPEED,
    _EFFICIENCY,
    Column("ready_on", "Ready on", D, example="2027-01-18"),
), "The warps on the looms and those that follow.",
    pairs=(Pair("warp_left_m", "<=", "set_length_m"), Pair("tail_m", "<", "set_length_m")))  # fmt: skip

READINGS = Table("readings", "Readings", (
    *loom_columns(),
    Column("read_at", "Read at", M, needed=True, key=True, example="2027-01-04 06:00"),
    Column("warp_left_m", "Warp left", N, unit="m", low=0, high=60000, example="1240"),
    _SPEED,
    _EFFICIENCY,
    Column("picks", "Picks", N, low=0, example="812000"),
), "Readings of the warp left, newer than the warp list.")  # fmt: skip

ARTICLES = Table("articles", "Articles", (
    Column("article", "Article", I, needed=True, key=True, example="A-1207"),
    Column("pick_density_per_cm", "Pick density", N, needed=True, unit="picks/cm", low=0.5, high=200, example="24"),
    Column("take_up", "Take-up", P, needed=True, low=0, high=0.6, example="6"),
    Column("take_up_basis", "Take-up basis", W, words=("crimp", "contraction"), example="crimp",
           about="crimp: (warp - cloth)/cloth; contraction: (warp - cloth)/warp. Empty = crimp."),
    Column("contribution_per_m", "Contribution per metre", N, about="Currency per metre of cloth.", example="0.62"),
    Column("warp_value_per_m", "Warp value per metre", N, low=0, about="Currency per metre of warp.", example="2.10"),
    Column("family", "Family", I, about="Articles whose settings are compared with each other.", example="F2"),
    Column("weft_tex", "Weft tex", N, unit="tex", low=0.1, high=10_000, about="Yarn count of the weft.", example="20"),
    Column("weft_price_per_kg", "Weft price per kg", N, low=0, about="Currency per kilogram.", example="3.40"),
), "What is woven.")  # fmt: skip

CHANGES = Table("changes", "Changes", (
    Column("kind", "Kind", W, needed=True, key=True, words=("repeat", "style"), example="repeat"),
    Column("hours_h", "Hours", N, needed=True, unit="h", low=0, high=72, example="2"),
    Column("machine_type", "Machine type", T, key=True, about="Blank = every type.", example="AJ-190"),
    Column("meanwhile_h", "Meanwhile", N, unit="h", low=0, high=72, example="0.5",
           about="Of these hours, what others do while a conversion goes on; no longer than the change. Empty = 0."),
    Column("trade", "Trade", T, about="Who does the change, where the mill plans them.", example="knotter"),
    Column("heads", "Heads", Z, low=0, high=100, about="How many of that trade.", example="1"),
), "How long an ordinary beam change stops a loom.", pairs=(Pair("meanwhile_h", "<=", "hours_h"),))  # fmt: skip

STANDING = Table("standing", "Standing", (
    *loom_columns(),
    Column("from_at", "From", M, needed=True, key=True, example="2027-02-01 06:00"),
    Column("to_at", "To", M, needed=True, example="2027-02-05 22:00"),
    Column("reason", "Reason", T, example="no order"),
), "Looms that wait anyway.", pairs=(Pair("from_at", "<", "to_at"),))  # fmt: skip

PARTS = Table("parts", "Parts", (
    Column("part", "Part", I, needed=True, key=True, example="RAIL-190"),
    Column("description", "Description", T),
    Column("unit", "Unit", T, example="pc"),
    Column("on_hand", "On hand", N, needed=True, low=0, about="Counted stock; a change is booked as a count.", example="6"),
    Column("safety_stock", "Safety stock", N, low=0, example="1"),
    Column("lead_time_days", "Lead time", N, unit="days", low=0, high=1000, example="28"),
    Column("lot_size", "Lot size", N, low=0, example="4"),
    Column("minimum_order", "Minimum order", N, low=0, example="4"),
    Column("price", "Price", N, low=0, about="Currency per unit.", example="310"),
    Column("supplier", "Supplier", T),
    Column("location", "Location", I, about="Where in the stockroom.", example="B-04"),
), "The parts of the kits.")  # fmt: skip

RECEIPTS = Table("receipts", "Receipts", (
    Column("order", "Order", I, needed=True, key=True, about="Order and line number.", example="4500123-10"),
    Column("part", "Part", I, needed=True, key=True, example="RAIL-190"),
    Column("quantity", "Quantity", N, needed=True, low=0, example="8"),
    Column("due", "Due", D, needed=True, example="2027-01-25"),
    Column("supplier", "Supplier", T),
    Column("unit", "Unit", T, about="Must be the part's unit, where it is given.", example="pc"),
), "Open order lines.")  # fmt: skip

CREWS = Table("crews", "Crews", (
    Column("crew", "Crew", I, needed=True, key=True, example="Fitters 1"),
    Column("trade", "Trade", T, needed=True, example="fitter"),
    Column("heads", "Heads", Z, needed=True, low=0, high=100, example="2"),
    Column("weekdays", "Weekdays", G, key=True, about="Empty = Monday to Friday.", example="Mon-Fri"),
    Column("shift_start", "Shift start", H, key=True, example="06:00"),
    Column("shift_end", "Shift end", H, example="14:00"),
    Column("breaks", "Breaks", T, example="10:00-10:15, 12:00-12:30",
           about="Inside the shift. A half hour that a break touches is not worked."),
    Column("rate_per_head_h", "Rate per head and hour", N, low=0, example="34"),
    Column("hall", "Hall", I, about="Blank = any hall."),
    Column("from_on", "From", D, key=True, about="First day of this row; empty = always."),
    Column("to_on", "To", D, about="Last day of this row, included."),
    Column("language", "Language", W, words=CARD_LANGUAGES, example="tr",
           about="In which this crew's cards speak (ISO 639-1). Empty = as the term `language of cards` says."),
), "Crews and their shifts; who is away or stays longer stands in Absences and Overtime.",
    pairs=(Pair("from_on", "<=", "to_on"), Pair("shift_start", "!=", "shift_end")))  # fmt: skip

ABSENCES = Table("absences", "Absences", (
    Column("crew", "Crew", I, needed=True, key=True, example="Fitters 1"),
    Column("from_on", "From", D, needed=True, key=True, example="2027-02-01"),
    Column("to_on", "To", D, needed=True, about="Last day, included.", example="2027-02-05"),
    Column("heads", "Heads", Z, low=0, high=100, about="How many are away; empty = all, 0 = taken back.", example="1"),
    Column("reason", "Reason", T, example="training"),
), "Whole days on which a crew, or some of it, is not there.", pairs=(Pair("from_on", "<=", "to_on"),))  # fmt: skip

OVERTIME = Table("overtime", "Overtime", (
    Column("crew", "Crew", I, needed=True, key=True, example="Fitters 1"),
    Column("on", "Date", D, needed=True, key=True, example="2027-02-06"),
    Column("start", "Start", H, needed=True, key=True, example="06:00"),
    Column("end", "End", H, needed=True, example="12:00"),
), "Hours that a crew works beside its shifts.", pairs=(Pair("start", "!=", "end"),))  # fmt: skip

RUNNING = Table("running", "Running", (
    Column("hall", "Hall", I, needed=True, key=True, example="Hall 1"),
    Column("weekdays", "Weekdays", G, needed=True, key=True, example="Mon-Sat"),
    Column("start", "Start", H, key=True, example="06:00"),
    Column("end", "End", H, example="22:00"),
), "When a hall weaves; missing = always.")  # fmt: skip

CLOSURES = Table("closures", "Closures", (
    Column("on", "Date", D, needed=True, key=True, example="2027-04-05"),
    Column("hall", "Hall", I, key=True, about="Blank = all halls."),
    Column("start", "Start", H, key=True, about="Empty = from midnight.", example="11:00"),
    Column("end", "End", H, about="Empty = to midnight.", example="13:00"),
    Column("stops", "Stops", W, words=("weaving", "work", "both"), about="Empty = both.", example="both"),
    Column("reason", "Reason", T),
), "Days or hours in which a hall does not weave or nobody converts.",
    pairs=(Pair("start", "!=", "end"),))  # fmt: skip

TOOLS = Table("tools", "Tools", (
    Column("tool", "Tool", I, needed=True, key=True, example="drilling jig"),
    Column("how_many", "How many", Z, needed=True, low=0, high=1000, example="1"),
), "Tools that conversions share.")  # fmt: skip

OPERATIONS = Table("operations", "Operations", (
    Column("step", "Step", Z, needed=True, low=0, high=100000, about="Rows with the same step are done side by side.", example="120"),
    Column("operation", "Operation", T, needed=True),
    Column("minutes", "Minutes", N, needed=True, unit="min", low=0, high=10000, example="25"),
    Column("minutes_low", "Minutes low", N, unit="min", low=0, high=10000, about="Optional three-point estimate."),
    Column("minutes_high", "Minutes high", N, unit="min", low=0, high=10000),
    Column("trade", "Trade", T, needed=True, example="fitter"),
    Column("heads", "Heads", Z, needed=True, low=0, high=100, example="2"),
    Column("tool", "Tool", I, example="hoist"),
    Column("place", "Place", W, words=("on loom", "bench before", "after restart"), about="Empty = on loom.", example="on loom"),
    Column("caution", "Caution", T),
    Column("torque_nm", "Torque", N, unit="N·m", low=0, high=5000, example="40"),
    Column("warp", "Warp", W, words=("out", "in"), example="out",
           about="out: needs the old warp out and the new one not yet in; in: needs the warp in. Empty = either. In a beam change the new warp comes in between."),
    Column("learns", "Learns", Y, about="No: takes what it takes, however often it was done. Empty = yes.", example="no"),
    Column("stops_neighbours", "Stops neighbours", Y, about="Yes: the looms beside it (by Row and Place) stand meanwhile; what they lose counts.", example="no"),
    Column("waivable", "Waivable", Y, about="No: nothing is to be signed off without it. Empty = yes. Kept; signing off does not ask for it yet.", example="no"),
), "The steps of a conversion, with condition columns.", open_columns="conditions", whole=True)  # fmt: skip

KIT_LINES = Table("kit_lines", "Kit lines", (
    Column("part", "Part", I, needed=True, example="RAIL-190"),
    Column("quantity", "Quantity", N, needed=True, low=0, example="2"),
    Column("comes_back", "Comes back", Y, about="Yes: returns to stock afterwards."),
), "The parts of a conversion, with condition columns.", open_columns="conditions", whole=True)  # fmt: skip

CHOICES = Table("choices", "Choices", (
    Column("choice", "Choice", T, needed=True, example="rail"),
    Column("alternative", "Alternative", T, needed=True, example="new rail"),
), "What the planner may choose between, with condition columns.", open_columns="conditions", whole=True)  # fmt: skip

SETPOINTS = Table("setpoints", "Setpoints", (
    Column("setting", "Setting", T, needed=True, example="crossing angle"),
    Column("side", "Side", T, example="left"),
    Column("unit", "Unit", T, example="deg"),
    Column("target", "Target", Kind.ANY, example="310"),
    Column("low", "Low", N, example="305"),
    Column("high", "High", N, example="315"),
    Column("repeatability", "Repeatability", N, low=0, example="1",
           about="Two readings of one thing differ by less in 95 of 100 cases (ISO 5725)."),
), "The settings to set, record and hold, with condition columns.", open_columns="conditions", whole=True)  # fmt: skip

CHECKS = Table("checks", "Checks", (
    Column("check", "Check", T, needed=True),
    Column("side", "Side", T),
    Column("kind", "Kind", W, words=("yes/no", "number"), about="Empty = yes/no.", example="yes/no"),
    Column("low", "Low", N),
    Column("high", "High", N),
    Column("safety", "Safety", Y, about="Yes: somebody could be hurt.", example="yes"),
    Column("waivable", "Waivable", Y, example="no",
           about="No: nothing is signed off without it. Empty = no for a check marked safety, yes else."),
), "The checks before sign-off, with condition columns.", open_columns="conditions", whole=True)  # fmt: skip

TERMS = Table("terms", "Terms", (
    Column("term", "Term", T, needed=True, key=True, example="horizon (days)"),
    Column("value", "Value", Kind.ANY, needed=True, example="84"),
), "The terms of the programme.")  # fmt: skip

TABLES: dict[str, Table] = {
    table.name: table
    for table in (LOOMS, WARPS, READINGS, ARTICLES, CHANGES, STANDING, PARTS, RECEIPTS, CREWS, ABSENCES,
                  OVERTIME, RUNNING, CLOSURES, TOOLS, OPERATIONS, KIT_LINES, CHOICES, SETPOINTS, CHECKS, TERMS, *RECORD_TABLES)
}  # fmt: skip
METHOD_TABLES = tuple(table.name for table in TABLES.values() if table.whole)

TERM_COLUMNS = (
    Column("programme", "programme", T, about="Name of the programme."),
    Column("time_zone", "time zone", T, about="The mill's local time, by its IANA name.", example="Europe/Vienna"),
    Column("currency", "currency", T, about="Code or sign of the currency that every price is in.", example="EUR"),
    Column("start", "start", D, low=1970, high=2099, about="First day of the programme. Empty = the day of planning."),
    Column("horizon_days", "horizon", Z, unit="days", low=1, high=1000, about="So many days from the start are planned."),
    Column("target_finish", "target finish", D, low=1970, high=2099, about="The day by which the mill wants to be done."),
    Column("firm_h", "firm", N, unit="hours", low=0, high=10000,
           about="A booking that starts within so many running hours is firm."),
    Column("patience_h", "patience", N, unit="hours", low=0, high=1000,
           about="So long a crew waits for a late beam-out before the rest of the warp is cut."),
    Column("allowance", "allowance", P, low=0, high=10, about="Added to the minutes of the method."),
    Column("learning_rate", "learning rate", P, low=0.5, high=1,
           about="Each doubling of the conversions of a machine type takes this share of the time. 100 = nothing is learned."),
    Column("learning_floor", "learning floor", P, low=0, high=1,
           about="However many are done, a conversion takes no less than this share of the minutes of the method."),
    Column("left_over_penalty", "left-over penalty", N, low=0,
           about="Cost of a loom that is not converted, beside the saving that it forgoes. In the currency."),
    Column("move_cost", "move cost", N, low=0, about="Cost of moving a published booking within 14 days; later ones a quarter. In the currency."),
    Column("soak_days", "soak", N, unit="days", low=0, high=1000,
           about="From the end of a pilot to the next loom of its machine type. 0 = no pilots."),
    Column("lead_trade", "lead trade", T, about="The trade whose crews carry a conversion from start to end."),
    Column("looms_stopped_at_once", "looms stopped at once", Z, low=1, about="At most so many in a hall. No row = no limit."),
    Column("day_to_day_variation", "day-to-day variation", P, low=0, high=1,
           about="How far the warp woven in a day differs from the average (coefficient of variation)."),
    Column("days_to_order", "days to order", Z, low=0, high=365,
           about="From the day of planning to the day on which what is missing is ordered."),
    Column("lead_time_none_given_days", "lead time where none is given", Z, unit="days", low=0, high=1000,
           about="For parts without a lead time of their own. 0 = such a part cannot be ordered."),
    Column("plan_with_orders", "plan with orders not yet placed", Y,
           about="Yes: a loom may wait for parts that can still be ordered. No: only stock and open orders count."),
    Column("open_over_closed_days", "open over closed days", Y,
           about="Yes: a loom may stand open over a day on which nobody converts. No or empty: only where it stands anyway."),
    Column("watch_h", "watch", N, unit="h", low=0, high=24,
           about="So long after a restart a crew of the lead trade must still be at work."),
    Column("stopped_per_section", "stopped per section", Z, low=1,
           about="At most so many looms of one weaver's section. No row = no limit."),
    Column("reference_plan", "reference plan", Z, low=1,
           about="Number of the published plan that progress is measured by. Empty = the first that was published."),
    Column("language_of_cards", "language of cards", W, words=CARD_LANGUAGES, example="tr",
           about="In which the fixed words of a card stand (ISO 639-1), unless Crews name another. Empty = en."),
    Column("address_of_screens", "address of the screens", T, example="http://planning-office:8501",
           about="Under which the screens are reached in the hall; a card's square code then leads to its loom."),
    Column("leno_yarn_tex", "leno yarn", N, unit="tex", low=0.1, high=10_000, about="Yarn count of the leno yarn."),
    Column("leno_yarn_price_per_kg", "leno yarn price", N, low=0, about="For a kilogram. In the currency."),
    Column("minutes_per_stop", "minutes per stop", N, unit="min", low=0, high=1000,
           about="How long a loom stands for one stop, where its hours were not recorded."),
    Column("worth_knowing", "worth knowing", P, low=0.001, high=1, about="The smallest change of a rate that matters."),
    Column("settling_days", "settling", N, unit="days", low=0, high=100,
           about="So long after a conversion a loom's figures do not count yet."),
    Column("visits_days", "visits", T, example="1, 7, 30", about="Days after sign-off on which the settings are read again."),
    Column("order_decided", "order decided", D, low=1970, high=2099,
           about="The day on which the order of the looms was decided. Empty = that of the first published plan."),
    Column("share_of_saving", "share of saving", P, low=0, high=10,
           about="So much of the saving per day that the loom list claims is counted on. Empty = 100."),
)  # fmt: skip
"""The terms, each as if it were a column of its own; besides these `pilot of TYPE`."""
TERM_HEADINGS: dict[str, str] = {column.title: column.field for column in TERM_COLUMNS}
"""Term as the sheet writes it → field of `Terms`."""

TERM_ACTS: dict[str, str] = {
    "programme": "titles of lists, files and screens",
    "time_zone": "every moment that is read, typed or shown",
    "currency": "every amount; none is converted",
    "start": "plan: no booking before it; the horizon counts from it",
    "horizon_days": "forecast and plan",
    "target_finish": "status: days before or after it; needs: when left-over looms want their kits",
    "firm_h": "plan: replanning leaves firm bookings alone; cost of a late beam-out",
    "patience_h": "plan: cost of a late beam-out",
    "allowance": "scope: hours; plan: how long a conversion takes",
    "learning_rate": "scope and plan: how long the next conversion of a machine type takes",
    "learning_floor": "scope and plan, as the learning rate",
    "left_over_penalty": "plan: which looms are booked",
    "move_cost": "plan: which bookings are moved",
    "soak_days": "plan: pilots",
    "lead_trade": "plan: crews; needs: working days for orders",
    "looms_stopped_at_once": "plan",
    "day_to_day_variation": "forecast: the spread of a beam-out; plan: cost of a late beam-out",
    "days_to_order": "plan: from when a part can be had to order",
    "lead_time_none_given_days": "plan: from when such a part can be had to order",
    "plan_with_orders": "plan: whether looms may wait for orders that are not placed yet",
    "open_over_closed_days": "plan: which starts there are",
    "watch_h": "plan: which starts there are",
    "stopped_per_section": "plan",
    "reference_plan": "status: what was planned",
    "language_of_cards": "cards and weavers' notes",
    "address_of_screens": "cards: where the square code leads",
    "leno_yarn_tex": "bobbins and savings",
    "leno_yarn_price_per_kg": "savings",
    "minutes_per_stop": "savings",
    "worth_knowing": "what the stops tell",
    "settling_days": "what the stops tell",
    "visits_days": "follow-up visits",
    "order_decided": "what the stops tell: whether looms were chosen by their latest figures",
    "share_of_saving": "plan: the saving that waiting forgoes",
}
"""Field of `Terms` → where it acts."""
PILOT_ABOUT = ("The loom of that machine type that is converted first. Empty = chosen by cost.", "plan: pilots")
"""Meaning of the terms `pilot of TYPE`, and where they act."""
