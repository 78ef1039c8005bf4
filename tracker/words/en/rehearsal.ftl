### The rehearsal: what it cannot play, what it is told.

spread-out-of-range = { $name } is { $value }; it must lie between { $least } and { $most }
    .means = A rate, share or length that the rehearsal was given is impossible.
