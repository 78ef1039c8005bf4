"""What forecast and planning both need as arrays. Pure; numpy and scipy only."""
