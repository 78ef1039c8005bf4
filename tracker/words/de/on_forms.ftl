### Was jedes Formular der Bildschirme von sich aus sagt.

form-not-yours = { $what }: dafür ist da: { $roles }.
form-yes = Ja: { $what }
form-no = Nein, so lassen
