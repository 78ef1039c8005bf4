### Der Bildschirm Bedingungen.

terms-about = Grenzen, Preise und Gewohnheiten des Werks, auf denen Pläne und Zahlen beruhen. Eine Änderung zählt ab dem nächsten Plan; Veröffentlichtes bleibt.
terms-term = Bedingung
terms-value = Gilt jetzt
terms-means = Bedeutet
terms-acts = Wirkt auf
terms-one = Eine Bedingung
terms-choose = eine wählen, um zu sehen, was sie war, und sie zu ändern
terms-default = Vorgabe
terms-by-default = { $value } (Vorgabe)
terms-new = Neuer Wert
terms-possible = Möglich: { $possible }.
terms-change = Ändern
terms-back = Zurück zur Vorgabe
terms-back-asks = { $term } geht zurück auf { $default }.
term-taken-back = { $term } ist wieder { $default }.
term-empty = { $term } braucht einen Wert
terms-named = { $term }
terms-was = Was sie war
terms-never = Nie geändert: Die Vorgabe gilt von Anfang an.
terms-when = Wann
terms-who = Wer
terms-old = Vorher
terms-now = Danach
terms-none = keine
