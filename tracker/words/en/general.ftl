### Pieces that the speaker itself needs, and the trade's fixed words.

just = { $value }
    .means = One value by itself.
and-more = and {"{n}"} more
    .means = The tail of a list that names only its first entries; {"{n}"} is how many are left.
word-yes = yes
    .means = Yes.
word-no = no
    .means = No.
