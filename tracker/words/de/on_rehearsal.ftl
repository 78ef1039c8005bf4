### Die Seite Durchspielen.

rehearsal-play = Durchspielen
rehearsal-play-help = Es geht weiter, während diese Seite verlassen ist, und wer hinsieht, sieht, wie weit es ist. Beim Anhalten bleibt, was fertig ist; was daraus wird, wird beim Plan abgelegt.
rehearsal-runs-asked = Durchläufe
rehearsal-played = Gespielt wird
rehearsal-held-against = Verglichen mit
rehearsal-worries-asked = Herausfinden, was jede Sorge wert ist (dauert etwa viermal so lang)
