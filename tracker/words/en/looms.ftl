### Which loom or hall is meant.

loom-in-several-halls = loom { $loom } stands in { $halls }
    .means = A loom number was given that several halls have.
    .hint = say in which hall
    .terminal = say which with --hall
loom-in-other-hall = loom { $loom } stands in { $halls }, not in { $hall }
    .means = A loom was looked for in a hall where it does not stand.
    .hint = leave the hall out, or correct it
no-such-loom = there is no loom { $loom }{ $hall ->
        [none] {""}
       *[other] {" "}in { $hall }
    }
    .means = A loom number was given that no hall has.
    .terminal = `beamslot scope` lists the looms
no-such-hall = { $could_be ->
        [none] there is no hall '{ $hall }'
       *[other] '{ $hall }' could be { $could_be }
    }
    .means = A hall was named that is none, or several.
    .hint = the halls are { $halls }
