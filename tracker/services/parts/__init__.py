"""Parts: the stockroom's book, kits and reservations, needs and orders."""
