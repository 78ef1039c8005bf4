### Welche Webmaschine oder Halle gemeint ist.

loom-in-several-halls = Webmaschine { $loom } steht in { $halls }
    .hint = angeben, in welcher Halle
loom-in-other-hall = Webmaschine { $loom } steht in { $halls }, nicht in { $hall }
    .hint = die Halle weglassen oder berichtigen
no-such-loom = es gibt keine Webmaschine { $loom }{ $hall ->
        [none] {""}
       *[other] {" "}in { $hall }
    }
no-such-hall = { $could_be ->
        [none] es gibt keine Halle „{ $hall }“
       *[other] „{ $hall }“ könnte { $could_be } sein
    }
    .hint = die Hallen sind { $halls }
