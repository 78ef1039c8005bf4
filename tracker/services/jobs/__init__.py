"""Long work: plans, scenarios, rehearsals and the reading of long lists, each in a process of its own.

A job is a kind and arguments (`kinds`): from them a snapshot of the mill is read, which the job's own process works on
(`worker`) without any database. The server follows it (`running`) and alone writes what came of it, in one transaction with
the job's end. How far it is stands in the server's memory only. Whoever looks sees all jobs, and may stop them (`desk`).
"""
