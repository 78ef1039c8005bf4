### Zeitpunkte, und die eigene Uhr, die ein Programm haben kann.

ahead-of-now = { $at } steht noch bevor.
    .hint = Angeben, was schon geschehen ist.
ahead-of-own-clock = { $at } steht noch bevor: dieses Programm hat seine eigene Uhr, und sie steht auf { $stands }.
    .hint = Angeben, was schon geschehen ist, oder die Uhr vorstellen.
own-clock = Dieses Programm hat seine eigene Uhr, wie es erfundene haben. Sie steht auf { $stands }.
    .screen = Was getan wurde, wird bis dahin erfasst.
own-clock-set = Die Uhr dieses Programms steht nun auf { $stands }.
computers-clock = Dieses Programm geht nach der Uhr des Rechners: { $now }.
clock-is-the-computers = { $database } geht nach der Uhr des Rechners, die hier nicht gestellt wird.
    .hint = Nur ein Programm der Vorführung hat eine Uhr, die man stellt.
clock-only-forward = Die Uhr steht auf { $stands }; { $asked } liegt davor.
    .hint = Sie wird nur vorgestellt, denn was bis dahin erfasst wurde, läge sonst in der Zukunft.
computer-clock-wrong = die Uhr dieses Rechners sagt { $at } UTC, und das liegt nicht zwischen { $first } und { $last }
    .hint = sie richtig stellen
moment-out-of-years = „{ $typed }“ liegt nicht zwischen { $first } und { $last }
