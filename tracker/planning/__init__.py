"""Options → costs → programme → result; verify. Pure; the only package that knows the solver."""
