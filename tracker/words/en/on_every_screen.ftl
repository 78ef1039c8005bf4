### What stands on every screen, or on several.

reading-the-database = Reading the database …
    .means = Said while a screen waits for its data.
