"""What a file is, and whether it is safe to open."""
