### Der Bildschirm Leute.

people-about = Wer sich anmelden darf, in welchen Rollen. Sobald jemand ein Konto hat, melden sich alle an, auch an diesem Rechner.
people-name = Name
people-roles = Rollen
people-since = Seit
people-ended = Beendet
people-add-somebody = Jemanden aufnehmen
people-first = Das erste Konto bekommt auch die Rolle des Verwalters; danach damit anmelden.
people-password = Passwort, mindestens { $least } Zeichen
people-add = Aufnehmen
people-change = Ein Konto ändern
people-whose = Wessen
people-roles-new = Rollen von nun an
people-change-roles = Rollen ändern
people-password-new = Neues Passwort
people-change-password = Passwort ändern
people-end = Konto beenden
people-end-asks = { $person } kann sich nicht mehr anmelden; offene Seiten enden.
people-at-least-one = mindestens eine
people-sessions = Jetzt angemeldet
people-sessions-none = Niemand ist angemeldet.
people-seen = Zuletzt gesehen
people-from = Von wo
people-session = Welche Sitzung
people-session-named = { $person }, { $address }, zuletzt gesehen { $at }
people-end-session = Sitzung beenden
people-end-session-asks = Die Seiten von { $person }, die von { $address } aus geöffnet wurden, schließen sich; was dort gerade getippt wird, kann noch kopiert werden.
