### The screen Load.

load-read-again = Read them again
    .means = The button below a reading that was stopped or broken off.
