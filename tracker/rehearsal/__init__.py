"""The programme played many times, with everything that varies drawn anew (MODEL.md). Pure: no database, no clock, a seed
is an argument."""
