"""Where the tables of a sheet are, which table each one is, and what each of its rows is."""
