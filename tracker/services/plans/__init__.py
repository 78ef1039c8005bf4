"""Plans: make, compare, keep, publish, verify; scenarios; what the programme is worth."""
