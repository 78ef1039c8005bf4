"""What signed-off looms taught is taken over: the proposed setpoint becomes the method's, as a load of that sheet would."""

from dataclasses import replace
from pathlib import Path
from tempfile import TemporaryDirectory

from tracker.commissioning.settings.taught import Taught
from tracker.errors import InputRefused
from tracker.services.context import Context
from tracker.services.loading.load import load
from tracker.services.loading.load_report import LoadReport
from tracker.services.people.permissions import May
from tracker.services.work.settings import SettingsReport
from tracker.services.work.settings_files import write_proposal


def take_over_setpoint(context: Context, report: SettingsReport, proposal: Taught) -> LoadReport:
    """Put a version of the method in force whose setpoint is the one proposed, its limits moved with it. DataError where it is not
    clear which row is meant, InputRefused where the review of the method stands against it."""
    context.require(May.LOAD)
    with TemporaryDirectory(prefix="beamslot-") as folder:
        file = Path(folder) / "setpoints.xlsx"
        write_proposal(context, file, replace(report, taught=(proposal,)))
        done = load(context, [file])
    if done.refusal:
        raise InputRefused(done.refusal.code, done.questions or done.refused, **done.refusal.params)
    return done
