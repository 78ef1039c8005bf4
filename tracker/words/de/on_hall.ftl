### Die Hallen, Reihe für Reihe.

screen-hall = Halle
hall-kit = Teilesatz
hall-alarms = Alarme
hall-all-kits = alle Sätze
hall-only-alarms = nur mit Alarmen
hall-as-table = Als Tabelle
hall-no-row = ohne Reihe
hall-row = Reihe { $row }
hall-place = Platz { $place }
hall-shown = { $shown } von { $all ->
        [one] { $all } Webmaschine
       *[other] { $all } Webmaschinen
    } · ein Klick führt zur Webmaschine
