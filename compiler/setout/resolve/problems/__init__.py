"""What can be wrong with names, constants and clauses: facts in, Diagnostic out. One module per matter."""

# ruff: noqa: F403

from setout.resolve.problems.amounts import *
from setout.resolve.problems.assemblies import *
from setout.resolve.problems.files import *
from setout.resolve.problems.filling import *
from setout.resolve.problems.heading import *
from setout.resolve.problems.joints import *
from setout.resolve.problems.names import *
from setout.resolve.problems.parts import *
from setout.resolve.problems.reach import *
from setout.resolve.problems.shop import *
from setout.resolve.problems.stocks import *
from setout.resolve.problems.strength import *
