"""Absences, overtime and breaks, sections, where the warp has its place, and the names of crews in a plan."""

import sqlalchemy as sa
from alembic import op

revision = "0004"
down_revision = "0003"
branch_labels = None
depends_on = None

ADDED = {
    "looms": {"section": sa.String()},
    "changes": {"meanwhile_h": sa.Double(), "trade": sa.String(), "heads": sa.Integer()},
    "crews": {"breaks": sa.String()},
    "closures": {"start": sa.Time(), "end": sa.Time()},
    "method_operations": {
        "warp": sa.String(), "learns": sa.Boolean(), "stops_neighbours": sa.Boolean(), "waivable": sa.Boolean(),
    },
    "method_checks": {"safety": sa.Boolean(), "waivable": sa.Boolean()},
    "bookings": {"crews": sa.JSON(), "needs": sa.JSON()},
    "plans": {"crew_changes": sa.Integer()},
}  # fmt: skip
"""Table → its new columns, all of which may be empty."""


def upgrade() -> None:
    op.create_table(
        "absences",
        sa.Column("id", sa.Integer(), nullable=False),
        sa.Column("crew", sa.String(), nullable=False),
        sa.Column("from_on", sa.Date(), nullable=False),
        sa.Column("to_on", sa.Date(), nullable=False),
        sa.Column("heads", sa.Integer(), nullable=True),
        sa.Column("reason", sa.String(), nullable=True),
        sa.PrimaryKeyConstraint("id", name=op.f("pk_absences")),
    )
    op.create_table(
        "overtime",
        sa.Column("id", sa.Integer(), nullable=False),
        sa.Column("crew", sa.String(), nullable=False),
        sa.Column("on", sa.Date(), nullable=False),
        sa.Column("start", sa.Time(), nullable=False),
        sa.Column("end", sa.Time(), nullable=False),
        sa.PrimaryKeyConstraint("id", name=op.f("pk_overtime")),
    )
    for table, columns in ADDED.items():
        for name, kind in columns.items():
            op.add_column(table, sa.Column(name, kind, nullable=True))
