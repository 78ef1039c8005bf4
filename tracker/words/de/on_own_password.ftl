own-password = Mein Passwort
own-password-about = Danach enden alle Seiten, auf denen Sie angemeldet sind, auch diese; melden Sie sich mit dem neuen Passwort an.
own-password-before = Bisheriges Passwort
own-password-after = Neues Passwort, mindestens { $least } Zeichen
own-password-change = Mein Passwort ändern
own-password-nobody = Niemand ist angemeldet; es gibt kein Passwort zu ändern.
