"""What a mill does without a plan: each beam-out as it comes."""
