"""The tables that a mill gives us, declared once: reading, writing, comparing and storing all follow this list."""

from dataclasses import replace

from tracker.domain.columns import Column, Kind, Pair, Table, loom_columns
from tracker.domain.record_tables import RECORD_TABLES
from tracker.errors import Message, message

T, I, W, N, Z, P, Y, D, M, H, G = (Kind.TEXT, Kind.IDENTIFIER, Kind.WORD, Kind.NUMBER, Kind.INTEGER, Kind.FRACTION, Kind.YES_NO, Kind.DATE, Kind.MOMENT, Kind.TIME, Kind.WEEKDAYS)  # noqa: E741  # fmt: skip


_SPEED = Column("speed_ppm", "Speed", N, unit="picks/min", low=20, high=2500, example="640")
_EFFICIENCY = Column("efficiency", "Efficiency", P, low=0.01, high=1.0, example="88")

CARD_LANGUAGES = ("de", "en", "es", "fr", "it", "pt", "tr", "zh")
"""Languages in which the fixed words of a card are there, by ISO 639-1."""

LOOMS = Table("looms", "Looms", (
    *loom_columns(needed_hall=True),
    Column("row", "Row", I, example="3"),
    Column("place", "Place", I, example="12"),
    Column("section", "Section", I, about="about-looms-section", example="S4"),
    Column("machine_type", "Machine type", T, needed=True, about="about-looms-machine-type", example="AJ-190"),
    Column("insertion", "Insertion", T, example="air-jet"),
    Column("year", "Year", Z, low=1900, about="about-looms-year", example="2012"),
    Column("reed_width_cm", "Reed width", N, unit="cm", low=30, high=1200, example="190"),
    Column("frames", "Frames", Z, low=1, high=40, example="8"),
    _SPEED,
    _EFFICIENCY,
    Column("saving_per_day", "Saving per day", N, low=0, about="about-looms-saving-per-day", example="11.50"),
    Column("capacity_unsold", "Capacity unsold", Y, about="about-looms-capacity-unsold", example="no"),
    Column("protected_until", "Protected until", D, about="about-looms-protected-until", example="2027-02-14"),
    Column("notes", "Notes", T),
), "about-sheet-looms", open_columns="attributes")  # fmt: skip

WARPS = Table("warps", "Warps", (
    *loom_columns(),
    Column("sequence", "Sequence", Z, needed=True, key=True, low=0, high=99, about="about-warps-sequence", example="0"),
    Column("article", "Article", I, needed=True, example="A-1207"),
    Column("set_length_m", "Set length", N, unit="m", low=1, high=60000, example="3000"),
    Column("warp_left_m", "Warp left", N, unit="m", low=0, high=60000, example="1240"),
    Column("read_at", "Read at", M, about="about-warps-read-at", example="2027-01-04 06:00"),
    Column("tail_m", "Tail", N, unit="m", low=0, high=500, about="about-warps-tail", example="8"),
    Column("change", "Change", W, words=("repeat", "style"), about="about-warps-change", example="repeat"),
    _SPEED,
    _EFFICIENCY,
    Column("ready_on", "Ready on", D, example="2027-01-18"),
), "about-sheet-warps",
    pairs=(Pair("warp_left_m", "<=", "set_length_m"), Pair("tail_m", "<", "set_length_m")))  # fmt: skip

READINGS = Table("readings", "Readings", (
    *loom_columns(),
    Column("read_at", "Read at", M, needed=True, key=True, example="2027-01-04 06:00"),
    Column("warp_left_m", "Warp left", N, unit="m", low=0, high=60000, example="1240"),
    _SPEED,
    _EFFICIENCY,
    Column("picks", "Picks", N, low=0, example="812000"),
), "about-sheet-readings")  # fmt: skip

ARTICLES = Table("articles", "Articles", (
    Column("article", "Article", I, needed=True, key=True, example="A-1207"),
    Column("pick_density_per_cm", "Pick density", N, needed=True, unit="picks/cm", low=0.5, high=200, example="24"),
    Column("take_up", "Take-up", P, needed=True, low=0, high=0.6, example="6"),
    Column("take_up_basis", "Take-up basis", W, words=("crimp", "contraction"), example="crimp",
           about="about-articles-take-up-basis"),
    Column("contribution_per_m", "Contribution per metre", N, about="about-articles-contribution-per-metre", example="0.62"),
    Column("warp_value_per_m", "Warp value per metre", N, low=0, about="about-articles-warp-value-per-metre", example="2.10"),
    Column("family", "Family", I, about="about-articles-family", example="F2"),
    Column("weft_tex", "Weft tex", N, unit="tex", low=0.1, high=10_000, about="about-articles-weft-tex", example="20"),
    Column("weft_price_per_kg", "Weft price per kg", N, low=0, about="about-articles-weft-price-per-kg", example="3.40"),
), "about-sheet-articles")  # fmt: skip

CHANGES = Table("changes", "Changes", (
    Column("kind", "Kind", W, needed=True, key=True, words=("repeat", "style"), example="repeat"),
    Column("hours_h", "Hours", N, needed=True, unit="h", low=0, high=72, example="2"),
    Column("machine_type", "Machine type", T, key=True, about="about-changes-machine-type", example="AJ-190"),
    Column("meanwhile_h", "Meanwhile", N, unit="h", low=0, high=72, example="0.5",
           about="about-changes-meanwhile"),
    Column("trade", "Trade", T, about="about-changes-trade", example="knotter"),
    Column("heads", "Heads", Z, low=0, high=100, about="about-changes-heads", example="1"),
), "about-sheet-changes", pairs=(Pair("meanwhile_h", "<=", "hours_h"),))  # fmt: skip

STANDING = Table("standing", "Standing", (
    *loom_columns(),
    Column("from_at", "From", M, needed=True, key=True, example="2027-02-01 06:00"),
    Column("to_at", "To", M, needed=True, example="2027-02-05 22:00"),
    Column("reason", "Reason", T, example="no order"),
), "about-sheet-standing", pairs=(Pair("from_at", "<", "to_at"),))  # fmt: skip

PARTS = Table("parts", "Parts", (
    Column("part", "Part", I, needed=True, key=True, example="RAIL-190"),
    Column("description", "Description", T),
    Column("unit", "Unit", T, example="pc"),
    Column("on_hand", "On hand", N, needed=True, low=0, about="about-parts-on-hand", example="6"),
    Column("safety_stock", "Safety stock", N, low=0, example="1"),
    Column("lead_time_days", "Lead time", N, unit="days", low=0, high=1000, example="28"),
    Column("lot_size", "Lot size", N, low=0, example="4"),
    Column("minimum_order", "Minimum order", N, low=0, example="4"),
    Column("price", "Price", N, low=0, about="about-parts-price", example="310"),
    Column("supplier", "Supplier", T),
    Column("location", "Location", I, about="about-parts-location", example="B-04"),
), "about-sheet-parts")  # fmt: skip

RECEIPTS = Table("receipts", "Receipts", (
    Column("order", "Order", I, needed=True, key=True, about="about-receipts-order", example="4500123-10"),
    Column("part", "Part", I, needed=True, key=True, example="RAIL-190"),
    Column("quantity", "Quantity", N, needed=True, low=0, example="8"),
    Column("due", "Due", D, needed=True, example="2027-01-25"),
    Column("supplier", "Supplier", T),
    Column("unit", "Unit", T, about="about-receipts-unit", example="pc"),
), "about-sheet-receipts")  # fmt: skip

CREWS = Table("crews", "Crews", (
    Column("crew", "Crew", I, needed=True, key=True, example="Fitters 1"),
    Column("trade", "Trade", T, needed=True, example="fitter"),
    Column("heads", "Heads", Z, needed=True, low=0, high=100, example="2"),
    Column("weekdays", "Weekdays", G, key=True, about="about-crews-weekdays", example="Mon-Fri"),
    Column("shift_start", "Shift start", H, key=True, example="06:00"),
    Column("shift_end", "Shift end", H, example="14:00"),
    Column("breaks", "Breaks", T, example="10:00-10:15, 12:00-12:30",
           about="about-crews-breaks"),
    Column("rate_per_head_h", "Rate per head and hour", N, low=0, example="34"),
    Column("hall", "Hall", I, about="about-crews-hall"),
    Column("from_on", "From", D, key=True, about="about-crews-from"),
    Column("to_on", "To", D, about="about-crews-to"),
    Column("language", "Language", W, words=CARD_LANGUAGES, example="tr",
           about="about-crews-language"),
), "about-sheet-crews",
    pairs=(Pair("from_on", "<=", "to_on"), Pair("shift_start", "!=", "shift_end")))  # fmt: skip

ABSENCES = Table("absences", "Absences", (
    Column("crew", "Crew", I, needed=True, key=True, example="Fitters 1"),
    Column("from_on", "From", D, needed=True, key=True, example="2027-02-01"),
    Column("to_on", "To", D, needed=True, about="about-absences-to", example="2027-02-05"),
    Column("heads", "Heads", Z, low=0, high=100, about="about-absences-heads", example="1"),
    Column("reason", "Reason", T, example="training"),
), "about-sheet-absences", pairs=(Pair("from_on", "<=", "to_on"),))  # fmt: skip

OVERTIME = Table("overtime", "Overtime", (
    Column("crew", "Crew", I, needed=True, key=True, example="Fitters 1"),
    Column("on", "Date", D, needed=True, key=True, example="2027-02-06"),
    Column("start", "Start", H, needed=True, key=True, example="06:00"),
    Column("end", "End", H, needed=True, example="12:00"),
), "about-sheet-overtime", pairs=(Pair("start", "!=", "end"),))  # fmt: skip

RUNNING = Table("running", "Running", (
    Column("hall", "Hall", I, needed=True, key=True, example="Hall 1"),
    Column("weekdays", "Weekdays", G, needed=True, key=True, example="Mon-Sat"),
    Column("start", "Start", H, key=True, example="06:00"),
    Column("end", "End", H, example="22:00"),
), "about-sheet-running")  # fmt: skip

CLOSURES = Table("closures", "Closures", (
    Column("on", "Date", D, needed=True, key=True, example="2027-04-05"),
    Column("hall", "Hall", I, key=True, about="about-closures-hall"),
    Column("start", "Start", H, key=True, about="about-closures-start", example="11:00"),
    Column("end", "End", H, about="about-closures-end", example="13:00"),
    Column("stops", "Stops", W, meant="what stops", words=("weaving", "work", "both"), about="about-closures-stops", example="both"),
    Column("reason", "Reason", T),
), "about-sheet-closures",
    pairs=(Pair("start", "!=", "end"),))  # fmt: skip

TOOLS = Table("tools", "Tools", (
    Column("tool", "Tool", I, needed=True, key=True, example="drilling jig"),
    Column("how_many", "How many", Z, needed=True, low=0, high=1000, example="1"),
), "about-sheet-tools")  # fmt: skip

OPERATIONS = Table("operations", "Operations", (
    Column("step", "Step", Z, needed=True, low=0, high=100000, about="about-operations-step", example="120"),
    Column("operation", "Operation", T, needed=True),
    Column("minutes", "Minutes", N, needed=True, unit="min", low=0, high=10000, example="25"),
    Column("minutes_low", "Minutes low", N, unit="min", low=0, high=10000, about="about-operations-minutes-low"),
    Column("minutes_high", "Minutes high", N, unit="min", low=0, high=10000),
    Column("trade", "Trade", T, needed=True, example="fitter"),
    Column("heads", "Heads", Z, needed=True, low=0, high=100, example="2"),
    Column("tool", "Tool", I, example="hoist"),
    Column("place", "Place", W, meant="where", words=("on loom", "bench before", "after restart", "bench after"), about="about-operations-place", example="on loom"),
    Column("caution", "Caution", T),
    Column("torque_nm", "Torque", N, unit="N·m", low=0, high=5000, example="40"),
    Column("warp", "Warp", W, words=("out", "in"), example="out",
           about="about-operations-warp"),
    Column("learns", "Learns", Y, about="about-operations-learns", example="no"),
    Column("stops_neighbours", "Stops neighbours", Y, about="about-operations-stops-neighbours", example="no"),
    Column("waivable", "Waivable", Y, about="about-operations-waivable", example="no"),
), "about-sheet-operations", open_columns="conditions", whole=True)  # fmt: skip

KIT_LINES = Table("kit_lines", "Kit lines", (
    Column("part", "Part", I, needed=True, example="RAIL-190"),
    Column("quantity", "Quantity", N, needed=True, low=0, example="2"),
    Column("comes_back", "Comes back", Y, about="about-kit-lines-comes-back"),
), "about-sheet-kit-lines", open_columns="conditions", whole=True)  # fmt: skip

CHOICES = Table("choices", "Choices", (
    Column("choice", "Choice", T, needed=True, example="rail"),
    Column("alternative", "Alternative", T, needed=True, example="new rail"),
), "about-sheet-choices", open_columns="conditions", whole=True)  # fmt: skip

SETPOINTS = Table("setpoints", "Setpoints", (
    Column("setting", "Setting", T, needed=True, example="crossing angle"),
    Column("side", "Side", T, example="left"),
    Column("unit", "Unit", T, example="deg"),
    Column("target", "Target", Kind.ANY, example="310"),
    Column("low", "Low", N, example="305"),
    Column("high", "High", N, example="315"),
    Column("repeatability", "Repeatability", N, low=0, example="1",
           about="about-setpoints-repeatability"),
), "about-sheet-setpoints", open_columns="conditions", whole=True)  # fmt: skip

CHECKS = Table("checks", "Checks", (
    Column("check", "Check", T, needed=True),
    Column("side", "Side", T),
    Column("kind", "Kind", W, words=("yes/no", "number"), about="about-checks-kind", example="yes/no"),
    Column("low", "Low", N),
    Column("high", "High", N),
    Column("safety", "Safety", Y, about="about-checks-safety", example="yes"),
    Column("waivable", "Waivable", Y, example="no",
           about="about-checks-waivable"),
), "about-sheet-checks", open_columns="conditions", whole=True)  # fmt: skip

TERMS = Table("terms", "Terms", (
    Column("term", "Term", T, needed=True, key=True, example="horizon (days)"),
    Column("value", "Value", Kind.ANY, needed=True, example="84"),
), "about-sheet-terms")  # fmt: skip

TABLES: dict[str, Table] = {
    table.name: table
    for table in (LOOMS, WARPS, READINGS, ARTICLES, CHANGES, STANDING, PARTS, RECEIPTS, CREWS, ABSENCES,
                  OVERTIME, RUNNING, CLOSURES, TOOLS, OPERATIONS, KIT_LINES, CHOICES, SETPOINTS, CHECKS, TERMS, *RECORD_TABLES)
}  # fmt: skip
METHOD_TABLES = tuple(table.name for table in TABLES.values() if table.whole)

TERM_COLUMNS = tuple(replace(column, meant=f"term {column.heading}") for column in (
    Column("programme", "programme", T, about="about-term-programme"),
    Column("time_zone", "time zone", T, about="about-term-time-zone", example="Europe/Vienna"),
    Column("currency", "currency", T, about="about-term-currency", example="EUR"),
    Column("start", "start", D, low=1970, high=2099, about="about-term-start"),
    Column("horizon_days", "horizon", Z, unit="days", low=1, high=1000, about="about-term-horizon"),
    Column("target_finish", "target finish", D, low=1970, high=2099, about="about-term-target-finish"),
    Column("firm_h", "firm", N, unit="hours", low=0, high=10000,
           about="about-term-firm"),
    Column("patience_h", "patience", N, unit="hours", low=0, high=1000,
           about="about-term-patience"),
    Column("allowance", "allowance", P, low=0, high=10, about="about-term-allowance"),
    Column("learning_rate", "learning rate", P, low=0.5, high=1,
           about="about-term-learning-rate"),
    Column("learning_floor", "learning floor", P, low=0, high=1,
           about="about-term-learning-floor"),
    Column("left_over_penalty", "left-over penalty", N, low=0,
           about="about-term-left-over-penalty"),
    Column("move_cost", "move cost", N, low=0, about="about-term-move-cost"),
    Column("soak_days", "soak", N, unit="days", low=0, high=1000,
           about="about-term-soak"),
    Column("lead_trade", "lead trade", T, about="about-term-lead-trade"),
    Column("pilot_trade", "with the pilot throughout", T, example="electrician",
           about="about-term-with-the-pilot-throughout"),
    Column("looms_stopped_at_once", "looms stopped at once", Z, low=1, about="about-term-looms-stopped-at-once"),
    Column("day_to_day_variation", "day-to-day variation", P, low=0, high=1,
           about="about-term-day-to-day-variation"),
    Column("days_to_order", "days to order", Z, low=0, high=365,
           about="about-term-days-to-order"),
    Column("lead_time_none_given_days", "lead time where none is given", Z, unit="days", low=0, high=1000,
           about="about-term-lead-time-where-none-is-given"),
    Column("plan_with_orders", "plan with orders not yet placed", Y,
           about="about-term-plan-with-orders-not-yet-placed"),
    Column("open_over_closed_days", "open over closed days", Y,
           about="about-term-open-over-closed-days"),
    Column("watch_h", "watch", N, unit="h", low=0, high=24,
           about="about-term-watch"),
    Column("stopped_per_section", "stopped per section", Z, low=1,
           about="about-term-stopped-per-section"),
    Column("room", "room between bookings", N, low=0, high=5, about="about-term-room-between-bookings"),
    Column("no_second_chance", "no second chance", N, low=0, high=3, about="about-term-no-second-chance"),
    Column("usual_absence", "usual absence", P, low=0, high=0.5, about="about-term-usual-absence"),
    Column("receipts_later_days", "receipts later", Z, unit="days", low=0, high=60, about="about-term-receipts-later"),
    Column("pilots_for_type", "pilots for their type", Y, about="about-term-pilots-for-their-type"),
    Column("reference_plan", "reference plan", Z, low=1,
           about="about-term-reference-plan"),
    Column("language_of_cards", "language of cards", W, words=CARD_LANGUAGES, example="tr",
           about="about-term-language-of-cards"),
    Column("address_of_screens", "address of the screens", T, example="http://planning-office:8501",
           about="about-term-address-of-the-screens"),
    Column("leno_yarn_tex", "leno yarn", N, unit="tex", low=0.1, high=10_000, about="about-term-leno-yarn"),
    Column("leno_yarn_price_per_kg", "leno yarn price", N, low=0, about="about-term-leno-yarn-price"),
    Column("minutes_per_stop", "minutes per stop", N, unit="min", low=0, high=1000,
           about="about-term-minutes-per-stop"),
    Column("worth_knowing", "worth knowing", P, low=0.001, high=1, about="about-term-worth-knowing"),
    Column("settling_days", "settling", N, unit="days", low=0, high=100,
           about="about-term-settling"),
    Column("visits_days", "visits", T, example="1, 7, 30", about="about-term-visits"),
    Column("order_decided", "order decided", D, low=1970, high=2099,
           about="about-term-order-decided"),
    Column("share_of_saving", "share of saving", P, low=0, high=10,
           about="about-term-share-of-saving"),
))  # fmt: skip
"""The terms, each as if it were a column of its own; besides these `pilot of TYPE`."""
PILOT_OF = "pilot of "
TERM_HEADINGS: dict[str, str] = {column.title: column.field for column in TERM_COLUMNS}
"""Term as the sheet writes it → field of `Terms`."""


def term_named(term: str) -> Message:
    """A term for a person, by its name in the sheet; a name that is none of ours as it is."""
    column = next((column for column in TERM_COLUMNS if column.title == term), None)
    if term.startswith(PILOT_OF):
        return message("term-pilot", machine_type=term.removeprefix(PILOT_OF))
    return column.titled if column else message("just", value=term)


def acts(term: Column) -> Message:
    """Where a term acts."""
    code = term.about.replace("about-term", "acts")
    return message(code)
