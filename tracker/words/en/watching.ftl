### A folder in which files are dropped to be loaded.

watch-no-folder = there is no folder { $folder }
    .means = The folder to be watched is not there.
    .hint = make it first
watch-not-writable = nothing can be put into { $folder }: { $why }
    .means = Files could not be moved out of the way once they are loaded.
watch-loaded = { $file }: { $what }
    .means = A dropped file was loaded.
watch-refused = { $file } is refused, nothing was written: { $why }
    .means = A dropped file was not loaded.
    .hint = Why lies beside it in the folder refused.
watch-waits = { $why }; files wait until it can be written again
    .means = The database is held or gone for the moment.
watch-began = Watching { $folder }: files dropped there are loaded once they are whole.
    .means = The command has begun.
