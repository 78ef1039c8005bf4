"""Loom lists with known truth: drawn from a seed, and the numbered cases that mills' lists brought to light."""
