"""People: who is away."""
