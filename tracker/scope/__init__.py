"""Method and loom → work content: decision cells, operations, labour, learning. Pure."""
