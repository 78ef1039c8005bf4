"""The plan in the words of the trade: bookings, left over and why, notes."""
