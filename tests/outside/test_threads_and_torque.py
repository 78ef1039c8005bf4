"""The bolts of the sample's method: thread, tap drill and tightening torque against the standards' figures."""

import re
from math import pi, sqrt

import pytest

from sample_data.method import METHOD

D_MM, PITCH_MM = 10.0, 1.5
D2_MM = D_MM - 0.649519 * PITCH_MM
"""Pitch diameter, ISO 68-1 profile (from memory)."""
D3_MM = D_MM - 1.226869 * PITCH_MM
STRESS_AREA_MM2 = pi / 4 * ((D2_MM + D3_MM) / 2) ** 2


def test_the_thread():
    """B1, seen: ISO 898-1 and ISO 261/262 tables as printed by fastener handbooks."""
    assert pytest.approx(9.026, abs=0.001) == D2_MM
    assert pytest.approx(8.376, abs=0.001) == D_MM - 1.082532 * PITCH_MM
    assert pytest.approx(58.0, abs=0.05) == STRESS_AREA_MM2


def test_loads_of_class_8_8():
    """B2, quoted: ISO 898-1 tables; tensile strength 800 MPa, proof stress 580 MPa for this size."""
    assert pytest.approx(46_400, rel=3e-3) == STRESS_AREA_MM2 * 800
    assert pytest.approx(33_700, rel=3e-3) == STRESS_AREA_MM2 * 580


def test_the_tap_drill_of_the_method():
    """B3, quoted: ISO 2306 (from memory) and a general table: drill = diameter − pitch."""
    drilling = [row.operation for row in METHOD.operations if row.operation.startswith("Drill")]
    assert len(drilling) == 2  # left and right
    for operation in drilling:
        drill_mm, d_mm, pitch_mm = map(float, re.findall(r"\d+(?:\.\d+)?", operation))
        assert (d_mm, pitch_mm) == (D_MM, PITCH_MM)
        assert drill_mm == d_mm - pitch_mm == 8.5


def vdi_torque_nm(friction, head_mm=13.5):
    """Tightening torque at 90 % of the yield strength 640 MPa under tension and torsion; mean bearing diameter of a cap
    screw (16 + 11) / 2 mm. VDI 2230 (from memory)."""
    torsion = 1.5 * D2_MM / ((D2_MM + D3_MM) / 2) * (PITCH_MM / (pi * D2_MM) + 1.155 * friction)
    force_n = STRESS_AREA_MM2 * 0.9 * 640 / sqrt(1 + 3 * torsion**2)
    return force_n * (0.16 * PITCH_MM + 0.58 * D2_MM * friction + head_mm / 2 * friction) / 1000


@pytest.mark.parametrize(("friction", "torque_nm"), [(0.10, 43.5), (0.12, 49.5), (0.14, 55.1), (0.16, 60.3)])
def test_torque_by_vdi_2230(friction, torque_nm):
    """B4, computed from the VDI 2230 formula, from memory."""
    assert vdi_torque_nm(friction) == pytest.approx(torque_nm, rel=0.01)


def test_torque_by_the_handbook_formula():
    """B5, computed: T = K d F with K 0.20 and 75 % of the proof load 33,640 N, general handbook formula, from memory."""
    assert pytest.approx(50.46, rel=1e-3) == 0.20 * 0.010 * 0.75 * STRESS_AREA_MM2 * 580
    assert pytest.approx(50.46) == 0.20 * 0.010 * 0.75 * 33_640


def test_the_methods_torques_stay_below_what_the_bolt_bears():
    """Even well oiled (friction 0.10) the method's torque must not reach 90 % of the yield strength."""
    torques = [row.torque_nm for row in METHOD.operations if row.torque_nm]
    assert torques and max(torques) < vdi_torque_nm(0.10)
    checked = [check for check in METHOD.checks if check.check.startswith("Torque")]
    assert checked and all(
        check.low is not None and check.low <= max(torques) <= (check.high or 0) for check in checked
    )
