watch-no-folder = es gibt keinen Ordner { $folder }
    .hint = legen Sie ihn erst an
watch-not-writable = in { $folder } kann nichts abgelegt werden: { $why }
watch-loaded = { $file }: { $what }
watch-refused = { $file } ist abgelehnt, nichts wurde geschrieben: { $why }
    .hint = Warum, liegt daneben im Ordner refused.
watch-waits = { $why }; Dateien warten, bis wieder geschrieben werden kann
watch-began = { $folder } wird beobachtet: was dort abgelegt wird, wird eingelesen, sobald es ganz da ist.
