### Die Bildschirme, danach, wer sie öffnet.

group-work = Arbeit
group-plan = Plan
group-parts = Teile
group-worth = Nutzen
group-mill = Weberei
screen-status = Stand des Umbaus
screen-bookings = Termine
screen-beam-outs = Kettabläufe
screen-worth = Was es gebracht hat
screen-load = Einlesen
screen-needs = Teilesätze und Bedarf
screen-rehearsal = Durchspielen
screen-scenarios = Was wäre wenn
screen-changes = Änderungen
screen-people = Leute
screen-method = Methode
screen-terms = Vorgaben
