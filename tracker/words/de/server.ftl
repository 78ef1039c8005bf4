### Was der Server anstelle einer Seite antwortet.

not-this-name = Unter diesem Namen antworten die Bildschirme nicht.
from-another-site = Diese Anfrage kommt von einer anderen Seite.
nothing-here = Hier ist nichts.
database-not-read = Die Datenbank lässt sich nicht lesen.
    .hint = Sagen Sie es dem, der den Server betreut; verloren ist nichts.
sign-in-first = Erst anmelden.
