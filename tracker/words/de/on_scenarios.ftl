### Die Seite Szenarien.

scenarios-new = Ein neues Szenario
scenarios-seconds = Suche beenden nach (s)
scenarios-plan = Planen
scenarios-plan-help = Es geht weiter, während diese Seite verlassen ist, und wer hinsieht, sieht, wie weit es ist. Nach dieser Zeit, und beim Anhalten, wird der beste Plan behalten, der bis dahin gefunden ist.
scenario-unnamed = das Szenario hat keinen Namen
    .hint = geben Sie ihm einen
scenario-name-taken = es gibt schon ein Szenario { $name }
    .hint = wählen Sie einen anderen Namen
