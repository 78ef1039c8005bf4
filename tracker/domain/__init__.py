"""What the trade talks about: frozen dataclasses and pure rules. Imports the standard library only."""
