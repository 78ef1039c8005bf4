### The screen Rehearsal.

rehearsal-play = Play it
    .means = Heading above the form, and its button.
rehearsal-play-help = It goes on while this screen is left, and whoever looks sees how far it is. A stop keeps what is done; what comes of it is kept with the plan.
    .means = Below the button.
rehearsal-runs-asked = Runs
    .means = How often it is to be played.
rehearsal-played = Played
    .means = Which way of running the hall is played.
rehearsal-held-against = Held against
    .means = Other ways of running the hall, played in the same worlds.
rehearsal-worries-asked = Find out what each worry is worth (takes some four times as long)
    .means = Whether it is played once more with each source of trouble certain.
