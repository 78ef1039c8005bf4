"""Words of a sheet: headings, units, numbers, dates, halls, and what says that there is nothing."""
