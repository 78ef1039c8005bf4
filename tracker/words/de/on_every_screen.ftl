### Was auf jedem Bildschirm steht oder auf mehreren.

reading-the-database = Die Datenbank wird gelesen …

table-by = Ordnen nach
table-by-none = wie sie steht
table-down = absteigend
table-page = Seite
table-rows = Zeilen { $first } bis { $last } von { $rows }
