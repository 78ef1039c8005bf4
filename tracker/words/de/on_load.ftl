### Die Seite Laden.

load-read-again = Noch einmal lesen
