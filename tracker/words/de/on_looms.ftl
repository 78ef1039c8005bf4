### Die Liste der Webmaschinen.

looms-back = alle Webmaschinen
looms-unknown = { $what }. Die Liste aller Webmaschinen führt zu jeder.
looms-which = { $looms } Webmaschinen haben diese Nummer. Welche ist gemeint?
looms-no-hall = ohne Namen
looms-shown = { $shown } von { $all ->
        [one] { $all } Webmaschine
       *[other] { $all } Webmaschinen
    } · ein Klick auf die Nummer öffnet ihr Blatt
looms-none-fits = Keine Webmaschine passt zu diesen Filtern.
looms-loom = Webmaschine
looms-hall = Halle
looms-row = Reihe
looms-place = Platz
looms-type = Maschinentyp
looms-stage = Stand
looms-window = Gelegenheit
looms-start = Beginn
looms-end = Ende
looms-all = alle Webmaschinen
looms-all-halls = alle Hallen
looms-all-types = alle Maschinentypen
looms-all-stages = jeder Stand
screen-looms = Webmaschinen
