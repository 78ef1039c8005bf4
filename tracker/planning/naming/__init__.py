"""Who and when: the crews of each booking by name, and when it needs which other trade and tool."""
