"""Beamslot: plan and follow the conversion of a weaving hall, loom by loom, into the beam changes."""
