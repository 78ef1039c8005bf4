"""Was it worth it? Three answers, the savings and the payback (MODEL.md 5 to 7)."""
