"""What a screen asks, ready to show."""
