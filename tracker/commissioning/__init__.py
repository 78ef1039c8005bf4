"""After commissioning: settings held over time, visits, bobbins, and whether it was worth it. Pure; see MODEL.md."""
