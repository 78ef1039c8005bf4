"""The plan as the trade sees it: bookings, left over and why, notes."""
