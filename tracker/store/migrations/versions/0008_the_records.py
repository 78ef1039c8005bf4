"""What was done and read at the looms. The table `settings`, to which nothing ever wrote, gives way to `set_values`."""

import sqlalchemy as sa
import tracker.store.base
from alembic import op

revision = "0008"
down_revision = "0007"
branch_labels = None
depends_on = None

TEXT, NUMBER, WHOLE, MOMENT, ANY = (
    sa.String(), sa.Double(), sa.Integer(), tracker.store.base.UtcDateTime(), sa.JSON(),
)  # fmt: skip
WAIVED = {"waived_because": TEXT, "waived_by": TEXT, "waived_at": MOMENT}
SIX_TIMES = dict.fromkeys(("beam_out_at", "locked_at", "unlocked_at", "first_pick_at", "at_speed_at"), MOMENT)
TABLES = {
    "work_done": ({}, {
        "card": TEXT, "operation": TEXT, "started_at": MOMENT, "ended_at": MOMENT, "crew": TEXT, "stage": TEXT, **SIX_TIMES,
        "minutes": NUMBER, "heads": WHOLE, "torque_nm": NUMBER, "done_by": TEXT, "remark": TEXT, "hand_over": TEXT,
    }),
    "set_values": ({"setting": TEXT, "at": MOMENT}, {
        "side": TEXT, "value": ANY, "who": TEXT, "why": TEXT, "article": TEXT, **WAIVED,
    }),
    "check_results": ({"check": TEXT, "at": MOMENT}, {"side": TEXT, "result": ANY, "who": TEXT, **WAIVED}),
    "parts_used": ({"part": TEXT, "used": NUMBER}, {"card": TEXT, "left_over": NUMBER, "broken": NUMBER}),
    "stops": ({"from_at": MOMENT, "to_at": MOMENT, "stops": WHOLE, "picks": NUMBER}, {
        "article": TEXT, "cause": TEXT, "hours_h": NUMBER, "efficiency": NUMBER,
    }),
    "waste": ({"from_at": MOMENT, "to_at": MOMENT, "waste_width_mm": NUMBER}, {"side": TEXT, "article": TEXT}),
    "bobbins": ({"side": TEXT, "at": MOMENT, "grams_left": NUMBER}, {"tex": NUMBER}),
}  # fmt: skip
"""Table → its columns that are always filled, and those that may be empty."""
ADDED = {
    "articles": {"family": TEXT, "weft_tex": NUMBER, "weft_price_per_kg": NUMBER},
    "method_setpoints": {"repeatability": NUMBER},
}


def upgrade() -> None:
    op.drop_table("settings")
    for table, (filled, others) in TABLES.items():
        op.create_table(
            table,
            sa.Column("id", sa.Integer(), nullable=False),
            sa.Column("hall", sa.String(), nullable=False),
            sa.Column("loom", sa.String(), nullable=False),
            *(sa.Column(name, kind, nullable=False) for name, kind in filled.items()),
            *(sa.Column(name, kind, nullable=True) for name, kind in others.items()),
            sa.ForeignKeyConstraint(["hall", "loom"], ["looms.hall", "looms.loom"], name=op.f(f"fk_{table}_hall_looms")),
            sa.PrimaryKeyConstraint("id", name=op.f(f"pk_{table}")),
        )
        op.create_index(f"ix_{table}_hall_loom", table, ["hall", "loom"])
    for table, columns in ADDED.items():
        for name, kind in columns.items():
            op.add_column(table, sa.Column(name, kind, nullable=True))
