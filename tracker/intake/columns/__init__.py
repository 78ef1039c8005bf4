"""How the cells of a column are to be read: its plan, its values, its questions."""
