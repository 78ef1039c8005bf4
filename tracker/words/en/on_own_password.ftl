### The screen on which people change their own password.

own-password = My password
    .means = Title, and the link beside the way out.
own-password-about = Every page on which you are signed in ends afterwards, this one too; sign in with the new password.
    .means = What the screen does.
own-password-before = Password until now
    .means = Field.
own-password-after = New password, at least { $least } characters
    .means = Field.
own-password-change = Change my password
    .means = Button.
own-password-nobody = Nobody is signed in, so there is no password to change.
    .means = Where the mill has no accounts.
