"""Settings as series, and what is odd about them (MODEL.md 1 to 4)."""
