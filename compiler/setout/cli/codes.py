"""What the command's exit codes mean."""

CLEAN = 0  # warnings are allowed
ERRORS = 1  # the spec has errors; nothing was written
USAGE = 2  # the command was called wrongly
FAILED = 3  # the machine or setout itself failed: the disk is full, a fault in setout
CHANGED = 4  # diff: not 1, which every command gives to a spec with errors
INTERRUPTED = 130  # Ctrl-C
BROKEN_PIPE = 141  # whoever read the output went away
