"""From the programme to a choice and its proof: relaxation, a good start, neighbourhoods, integer programme."""
