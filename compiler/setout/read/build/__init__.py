"""What each rule of the grammar becomes in the tree."""

from setout.read.build.clauses import CLAUSES
from setout.read.build.expressions import EXPRESSIONS
from setout.read.build.filling import FILLING
from setout.read.build.job import JOB
from setout.read.build.work import WORK

ACTIONS = {**EXPRESSIONS, **CLAUSES, **JOB, **WORK, **FILLING}

__all__ = ["ACTIONS"]
