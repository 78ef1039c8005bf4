"""One use case per file: what the command and the screens call."""
