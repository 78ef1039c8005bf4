### Long work that goes on while its screen is left.

job-begins = it begins
    .means = A job was started, and its process has not said yet how far it is.
job-elsewhere = another server looks after it; how far it is can be seen there
    .means = A job of another server of the same database.
job-planned = { $how ->
        [scenario] Scenario { $scenario }
       *[made] Plan { $number }
    }: { $booked ->
        [one] 1 loom
       *[other] { $booked } looms
    } booked, { $left_over } left over, { MONEY($cost, $currency) }, gap { NUMBER($gap, maximumFractionDigits: 1) } %.{ $stopped ->
        [yes] {" "}It was stopped; this is the best that was found until then.
       *[no] {""}
    }{ $how ->
        [published] {" "}It is in force.
        [scenario] {""}
       *[made] {" "}It is not published.
    }{ $notes ->
        [none] {""}
       *[other] {" "}{ $notes }
    }
    .means = What came of a job that made a plan.
job-rehearsed = Plan { $plan } was played { $runs ->
        [one] once
       *[other] { $runs } times
    }{ $stopped ->
        [yes] , then stopped
       *[no] {""}
    }; kept with the plan.
    .means = What came of a job that rehearsed the plan in force.
job-runs-already = { $kind ->
        [plan] a plan is being made
        [scenario] a scenario is being planned
        [rehearsal] a rehearsal is being played
        [tuning] terms are being tuned
       *[reading] lists are being read
    } already, begun by { $who } on { $since }
    .means = Somebody starts long work of which there is one at a time.
    .hint = wait for its end, or stop it
job-process-lost = its process was ended from outside (code { $code }); nothing was written
    .means = The system or a person ended the process of a job, as it does where memory is short.
    .hint = start it again
job-server-lost = the server that looked after it is no more; nothing was written
    .means = The server was ended or killed while a job ran.
    .hint = start it again
job-failed = it failed ({ $fault }); nothing was written. The details stand in the terminal that serves the screens.
    .means = A fault of the program in the process of a job.
job-not-written = what came of it could not be written; the details stand in the terminal that serves the screens
    .means = The database was not to be had when a job was done.
    .hint = start it again
job-not-begun = no process could be started for it: { $why }
    .means = The system refuses another process.
job-of-another-server = it is looked after by another server of this machine (process { $process })
    .means = A job is to be stopped on the screens of another server than the one that runs it.
    .hint = stop it on the screens of that server
job-read = { $files } read
    .means = What came of a job that read lists; what they say stands below it.
reading-stopped = the reading was stopped; nothing was written
    .means = Somebody stopped the job that read lists.
    .hint = read them again
