"""Absences, overtime, breaks, sections, and where the warp has its place."""

import sqlalchemy as sa
import tracker.store.base
from alembic import op

revision = '0003'
down_revision = '0002'
branch_labels = None
depends_on = None


def upgrade() -> None:
    op.create_table('absences',
    sa.Column('id', sa.Integer(), nullable=False),
    sa.Column('crew', sa.String(), nullable=False),
    sa.Column('from_on', sa.Date(), nullable=False),
    sa.Column('to_on', sa.Date(), nullable=False),
    sa.Column('heads', sa.Integer(), nullable=True),
    sa.Column('reason', sa.String(), nullable=True),
    sa.PrimaryKeyConstraint('id', name=op.f('pk_absences'))
    )
    op.create_table('overtime',
    sa.Column('id', sa.Integer(), nullable=False),
    sa.Column('crew', sa.String(), nullable=False),
    sa.Column('on', sa.Date(), nullable=False),
    sa.Column('start', sa.Time(), nullable=False),
    sa.Column('end', sa.Time(), nullable=False),
    sa.PrimaryKeyConstraint('id', name=op.f('pk_overtime'))
    )
    with op.batch_alter_table('changes', schema=None) as batch_op:
        batch_op.add_column(sa.Column('meanwhile_h', sa.Double(), nullable=True))
        batch_op.add_column(sa.Column('trade', sa.String(), nullable=True))
        batch_op.add_column(sa.Column('heads', sa.Integer(), nullable=True))

    with op.batch_alter_table('closures', schema=None) as batch_op:
        batch_op.add_column(sa.Column('start', sa.Time(), nullable=True))
        batch_op.add_column(sa.Column('end', sa.Time(), nullable=True))

    with op.batch_alter_table('crews', schema=None) as batch_op:
        batch_op.add_column(sa.Column('breaks', sa.String(), nullable=True))

    with op.batch_alter_table('bookings', schema=None) as batch_op:
        batch_op.add_column(sa.Column('crews', sa.JSON(), nullable=True))
        batch_op.add_column(sa.Column('needs', sa.JSON(), nullable=True))

    with op.batch_alter_table('plans', schema=None) as batch_op:
        batch_op.add_column(sa.Column('crew_changes', sa.Integer(), nullable=True))

    with op.batch_alter_table('looms', schema=None) as batch_op:
        batch_op.add_column(sa.Column('section', sa.String(), nullable=True))

    with op.batch_alter_table('method_checks', schema=None) as batch_op:
        batch_op.add_column(sa.Column('safety', sa.Boolean(), nullable=True))
        batch_op.add_column(sa.Column('waivable', sa.Boolean(), nullable=True))

    with op.batch_alter_table('method_operations', schema=None) as batch_op:
        batch_op.add_column(sa.Column('warp', sa.String(), nullable=True))
        batch_op.add_column(sa.Column('learns', sa.Boolean(), nullable=True))
        batch_op.add_column(sa.Column('stops_neighbours', sa.Boolean(), nullable=True))
        batch_op.add_column(sa.Column('waivable', sa.Boolean(), nullable=True))



def downgrade() -> None:
    with op.batch_alter_table('method_operations', schema=None) as batch_op:
        batch_op.drop_column('waivable')
        batch_op.drop_column('stops_neighbours')
        batch_op.drop_column('learns')
        batch_op.drop_column('warp')

    with op.batch_alter_table('method_checks', schema=None) as batch_op:
        batch_op.drop_column('waivable')
        batch_op.drop_column('safety')

    with op.batch_alter_table('plans', schema=None) as batch_op:
        batch_op.drop_column('crew_changes')

    with op.batch_alter_table('bookings', schema=None) as batch_op:
        batch_op.drop_column('needs')
        batch_op.drop_column('crews')

    with op.batch_alter_table('looms', schema=None) as batch_op:
        batch_op.drop_column('section')

    with op.batch_alter_table('crews', schema=None) as batch_op:
        batch_op.drop_column('breaks')

    with op.batch_alter_table('closures', schema=None) as batch_op:
        batch_op.drop_column('end')
        batch_op.drop_column('start')

    with op.batch_alter_table('changes', schema=None) as batch_op:
        batch_op.drop_column('heads')
        batch_op.drop_column('trade')
        batch_op.drop_column('meanwhile_h')

    op.drop_table('overtime')
    op.drop_table('absences')
