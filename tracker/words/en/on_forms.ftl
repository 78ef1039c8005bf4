### What every form of the screens says by itself.

form-not-yours = To { $what } is for { $roles }.
    .means = In place of a form that who looks may not use.
form-yes = Yes: { $what }
    .means = The button that does what was asked about.
form-no = No, leave it
    .means = The button that does not do what was asked about.
