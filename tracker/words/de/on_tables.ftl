### Überschriften von Tabellen auf mehreren Bildschirmen.

head-loom = Webmaschine
head-hall = Halle
head-start = Beginn
head-part = Teil
head-description = Beschreibung
head-unit = Einheit
head-quantity = Menge
head-supplier = Lieferant
head-state = Zustand
head-card = Karte
head-week = ISO-Woche
head-amount = Betrag ({ $currency })
as-of = Stand { $at }
of-all = { $some } von { $all }
table-as-csv = als CSV
table-as-workbook = als Arbeitsmappe
table-file = Tabelle
