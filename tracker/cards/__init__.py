"""What stands on a card, worked out from the mill, its plan and the loom's work content."""
