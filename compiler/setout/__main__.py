"""`python -m setout` is the command itself."""

import sys

from setout.cli import main

sys.exit(main())
