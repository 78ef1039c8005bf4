### The screen Scenarios.

scenarios-new = A new scenario
    .means = Heading above the form of a scenario.
scenarios-seconds = Stop the search after (s)
    .means = Seconds after which the best plan found so far is kept.
scenarios-plan = Plan it
    .means = The button below the form.
scenarios-plan-help = It goes on while this screen is left, and whoever looks sees how far it is. At the time limit, and when it is stopped, the best plan found so far is kept.
    .means = Below the button.
scenario-unnamed = the scenario has no name
    .means = A scenario is planned on its screen without a name.
    .hint = give it one
scenario-name-taken = there is a scenario { $name } already
    .means = The scenario named on the screen would stand beside another of its name.
    .hint = choose another name
