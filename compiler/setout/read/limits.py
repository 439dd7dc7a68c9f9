"""How much of a spec is read: far more than a job needs, little enough that any file is dealt with in a second."""

MAX_BYTES = 1_000_000  # a file
MAX_TOKENS = 100_000  # words, numbers and marks in a file
MAX_NESTING = 64  # braces within braces, or parentheses within parentheses
MAX_OPERATORS = 100  # operators in one statement; the stages after this one work expressions out by recursion
MAX_DIGITS = 12  # digits in a row in a number
MAX_NAME = 80  # characters of a name or path
MAX_MISTAKES = 20  # syntax errors told of in one run
