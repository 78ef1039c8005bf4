"""Six weeks of the sample mill as they went, invented from the plan of its first day and one seed: what the demo plays."""
