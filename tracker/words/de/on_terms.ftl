### Der Bildschirm Vorgaben.

terms-about = Grenzen, Preise und Gewohnheiten der Weberei, auf denen Pläne und Zahlen beruhen. Eine Änderung zählt ab dem nächsten Plan; Veröffentlichtes bleibt.
terms-term = Vorgabe
terms-value = Gilt jetzt
terms-means = Bedeutet
terms-acts = Wirkt auf
terms-in-sheet = Im englischen Blatt Terms
terms-one = Eine Vorgabe
terms-choose = eine wählen, um zu sehen, was sie war, und sie zu ändern
terms-default = Von Anfang an
terms-by-default = { $value } (von Anfang an)
terms-new = Neuer Wert
terms-possible = Möglich: { $possible }.
terms-change = Ändern
terms-back = Zurück zum Anfang
terms-back-asks = { $term } geht zurück auf { $default }.
term-taken-back = { $term } ist wieder { $default }.
term-empty = { $term } braucht einen Wert
terms-named = { $term }
terms-was = Was sie war
terms-never = Nie geändert: es gilt, was von Anfang an gilt.
terms-when = Wann
terms-who = Wer
terms-old = Vorher
terms-now = Danach
terms-none = keine
