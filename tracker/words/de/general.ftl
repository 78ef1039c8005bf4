### Was der Sprecher selbst braucht, und die festen Wörter des Fachs. Ein Wort für eine Sache, in allen Dateien hier:
### mill Weberei, loom Webmaschine, hall Halle, warp Kette, beam Kettbaum, beam-out Kettablauf, beam change Kettwechsel, window Gelegenheit,
### conversion Umbau, method Methode, operation Arbeitsgang, choice Wahl, scope Umfang, booking Termin, firm fest,
### left over übrig, kit Teilesatz (short lückenhaft), part Teil, pilot Pilot, run-in Einlauf, sign-off Abnahme, stage Stand,
### setting Einstellung, setpoint Sollwert, stops Stillstände, picks Schuss, waste Abfall, crew Mannschaft, trade Beruf, heads Leute,
### waive erlassen, stockroom Lager, receipt Zugang, issue Ausgabe, supplier Lieferant, order Bestellung, lead time Lieferzeit,
### load einlesen, finding Befund, doubt Zweifel, refused abgelehnt, workbook Arbeitsmappe, sheet Blatt, row Zeile,
### heading Überschrift, terms Vorgaben, horizon Horizont, proof Beweis, gap Abstand, rehearse durchspielen, scenario Szenario, record erfassen.
### Blätter und Überschriften unserer Arbeitsmappen stehen in sheets.ftl und headings.ftl; der Leser kennt sie in beiden Sprachen.
### Der Rat für ein Terminal (.terminal) fehlt hier mit Absicht: der Befehl spricht Englisch.

just = { $value }
own-value = { OWN($value) }
empty-value = leer
and-more = und {"{n}"} weitere
word-yes = ja
word-no = nein
language-name = Deutsch
from-to = { $start } bis { $end }

## Arten von Lagerbewegungen

word-opening = Anfangsbestand
word-receipt = Zugang
word-issue = Ausgabe
word-return = Rückgabe
word-recovered = zurückgewonnen
word-adjustment = Berichtigung
word-count = Zählung

## Stand einer Webmaschine

word-surveyed = aufgenommen
word-scoped = Umfang bekannt
word-booked = eingeplant
word-kitted = Teilesatz vollständig
word-in-work = in Arbeit
word-run-in = Einlauf
word-stopped = abgebrochen
word-signed-off = abgenommen
word-put-off = zurückgestellt
word-left-out = ausgenommen

## Arten von Gelegenheiten

word-repeat = gleicher Artikel
word-style = anderer Artikel
word-standing = steht ohnehin
word-mid-warp = mitten in der Kette

## Was die Suche nach einem Plan ergab

word-proven-optimal-within-tolerance = bewiesen bestmöglich innerhalb der Toleranz
word-feasible-with-gap = ausführbar, mit Abstand
word-infeasible = nicht ausführbar
word-timed-out = Zeit abgelaufen
