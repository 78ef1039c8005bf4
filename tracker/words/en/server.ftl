### What the server answers in place of a page.

not-this-name = The screens do not answer under this name.
    .means = The address in the browser names a host that the server was not told of.
from-another-site = This request comes from another site.
    .means = The origin of a request is not the server itself.
nothing-here = There is nothing here.
    .means = A path that the server does not answer.
database-not-read = The database cannot be read.
    .means = Nobody can be let in while it cannot be known who has an account.
    .hint = Tell who looks after the server; nothing is lost.
sign-in-first = Sign in first.
    .means = A program asked without a session.
