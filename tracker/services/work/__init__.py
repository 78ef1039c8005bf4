"""The work: what each loom needs and when its warp runs out, what was done and what it took."""
