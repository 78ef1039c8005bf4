"""The checks of a plan, free of the solver and of the planner's arrays: plain loops over bookings and data."""
