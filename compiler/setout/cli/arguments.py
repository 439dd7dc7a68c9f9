"""What may be typed after `setout`. Nothing heavy is imported before a command runs."""

from __future__ import annotations

import argparse
import re
from argparse import ArgumentParser, ArgumentTypeError, Namespace
from collections.abc import Callable
from importlib import import_module

from setout import __version__

FORMATS = ("pdf", "html", "csv", "json", "svg")

PRINTED = ("text", "markdown", "json")

CHANGE_FORMATS = (*PRINTED, "html", "pdf")

TEMPLATES = ("list", "bookcase", "base")

EXIT_CODES = """\
exit codes:
  0  clean; there may be warnings
  1  the spec has errors, nothing was written (fmt --check: the layout is another)
  2  the command was called wrongly
  3  setout or the machine failed (a full disk, a fault in setout)
  4  diff: something changes (1 stays for specs with errors)"""


def parsed(argv: list[str]) -> Namespace:
    """The arguments, with `run` the command's function. Prints and raises SystemExit as argparse does."""
    return _parser().parse_args(argv)


def _parser() -> ArgumentParser:
    parser = ArgumentParser(
        prog="setout",
        description="From a plain-text furniture spec to the shop's documents.",
        epilog=EXIT_CODES,
        formatter_class=argparse.RawDescriptionHelpFormatter,
        allow_abbrev=False,
    )
    parser.add_argument("--version", action="version", version=f"setout {__version__}")
    commands = parser.add_subparsers(title="commands", metavar="COMMAND", required=True)
    for add in (_build, _check, _why, _diff, _fmt, _new, _explain, _practice):
        add(commands)
    return parser


def _command(commands, name: str, summary: str) -> ArgumentParser:
    parser = commands.add_parser(
        name,
        help=summary,
        description=summary[0].upper() + summary[1:] + ".",
        epilog=EXIT_CODES,
        formatter_class=argparse.RawDescriptionHelpFormatter,
        allow_abbrev=False,
    )
    parser.set_defaults(run=_runner(name))
    return parser


def _runner(name: str) -> Callable[[Namespace], int]:
    return lambda given: import_module(f"setout.cli.{name}").run(given)


def _build(commands) -> None:
    parser = _command(commands, "build", "write the packet of a spec")
    parser.add_argument("spec", metavar="SPEC", help="the spec, a .rod file")
    parser.add_argument(
        "--out", metavar="DIR", type=_folder, help="where the documents go (default: out/NAME in this folder)"
    )
    parser.add_argument(
        "--format",
        metavar="LIST",
        type=_formats,
        default=FORMATS,
        help=f"which documents, with commas between: {','.join(FORMATS)} (default: all)",
    )
    parser.add_argument(
        "--plan-seconds",
        metavar="S",
        type=_seconds,
        help="plan the cutting for so long (default: a fixed amount of work, the same on every machine)",
    )
    _settings(parser)


def _check(commands) -> None:
    parser = _command(commands, "check", "say what is wrong with a spec, write nothing")
    parser.add_argument("specs", metavar="SPEC", nargs="+", help="the spec, a .rod file; - reads standard input")
    parser.add_argument("--format", choices=("text", "json"), default="text", help="for people (default) or programs")
    _settings(parser)


def _why(commands) -> None:
    parser = _command(commands, "why", "show how a part's sizes and place were worked out")
    parser.add_argument("spec", metavar="SPEC", help="the spec, a .rod file; - reads standard input")
    parser.add_argument("part", metavar="PART[.AXIS]", help="such as left_base.shelf.2 or left_base.shelf.2.wide")
    _settings(parser)


def _diff(commands) -> None:
    parser = _command(commands, "diff", "tell what a change of the spec does to the boards")
    parser.add_argument(
        "old", metavar="OLD", nargs="?", help="the spec before: a .rod file, or FILE@REVISION as Git has it"
    )
    parser.add_argument(
        "new", metavar="NEW", nargs="?", help="the spec now, likewise (default: the file of which OLD is a revision)"
    )
    parser.add_argument(
        "--format",
        metavar="LIST",
        type=_change_formats,
        default=PRINTED[:1],
        help=f"with commas between: one of {', '.join(PRINTED)}, which is printed (default: text), and html, pdf, which"
        " are written",
    )
    parser.add_argument(
        "--out", metavar="DIR", type=_folder, help="where html and pdf go (default: out/NAME in this folder)"
    )
    parser.add_argument(
        "--for-git",
        metavar="ARGUMENT",
        nargs=argparse.REMAINDER,
        help="be the driver that git diff and git log run: all that follows is what Git says of a file",
    )
    _settings(parser)


def _fmt(commands) -> None:
    parser = _command(commands, "fmt", "put specs into the canonical layout")
    parser.add_argument(
        "files",
        metavar="FILE",
        nargs="+",
        help="a .rod file, laid out in place; - goes from standard input to standard output",
    )
    parser.add_argument("--check", action="store_true", help="write nothing; name what would change, and exit with 1")
    parser.add_argument("--diff", action="store_true", help="write nothing; print what would change")


def _new(commands) -> None:
    parser = _command(commands, "new", "start a spec")
    parser.add_argument("name", metavar="NAME", help="such as hall_shelves: hall_shelves.rod is written")
    start = parser.add_mutually_exclusive_group()
    start.add_argument(
        "--template", choices=TEMPLATES, default=TEMPLATES[0], help=f"what to start from (default: {TEMPLATES[0]})"
    )
    start.add_argument(
        "--from",
        metavar="TABLE",
        dest="table",
        help="make loose parts of a table, a .csv file with such heads as part, length (mm), width, qty, material",
    )


def _explain(commands) -> None:
    parser = _command(commands, "explain", "tell what a diagnostic's code means")
    parser.add_argument("code", metavar="CODE", nargs="?", help="such as rod301; without it, all codes are listed")


def _practice(commands) -> None:
    parser = _command(commands, "practice", "print the table of rules of thumb, each with its source")
    parser.add_argument(
        "name",
        metavar="NAME",
        nargs="?",
        help="a row such as pocket_spacing, the start of several such as screw, or rows, figures, species or panel",
    )


def _settings(parser: ArgumentParser) -> None:
    parser.add_argument(
        "--set",
        metavar="NAME=VALUE",
        type=_setting,
        action=_Collected,
        default={},
        help="give a top-level value or a measure, for this run only; may be repeated",
    )


class _Collected(argparse.Action):
    """Gathers NAME=VALUE pairs in a mapping; a name given twice is a mistake."""

    def __call__(self, parser, namespace, values, option_string=None) -> None:
        name, text = values
        given = dict(getattr(namespace, self.dest))
        if name in given:
            parser.error(f"argument --set: {name} is given twice")
        setattr(namespace, self.dest, {**given, name: text})


def _setting(text: str) -> tuple[str, str]:
    name, sign, value = text.partition("=")
    if not sign or not re.fullmatch(r"[A-Za-z_]\w*", name.strip()) or not value.strip():
        raise ArgumentTypeError(f"{text!r} is not NAME=VALUE, such as toe=3-1/2")
    return name.strip(), value.strip()


def _seconds(text: str) -> float:
    if not re.fullmatch(r"\d{1,5}(\.\d{1,3})?", text) or not float(text):
        raise ArgumentTypeError(f"{text!r} is not a number of seconds, such as 30")
    return float(text)


def _folder(text: str) -> str:
    if not text:
        raise ArgumentTypeError("the name of a folder is wanted")
    return text


def _formats(text: str) -> tuple[str, ...]:
    return _among(text, FORMATS)


def _change_formats(text: str) -> tuple[str, ...]:
    asked = _among(text, CHANGE_FORMATS)
    if len(set(asked) & set(PRINTED)) > 1:
        raise ArgumentTypeError(f"of {', '.join(PRINTED)} only one can be printed at a time")
    return asked


def _among(text: str, known: tuple[str, ...]) -> tuple[str, ...]:
    """Words with commas between, each known, in the order known."""
    asked = tuple(dict.fromkeys(word.strip() for word in text.split(",") if word.strip()))
    unknown = [word for word in asked if word not in known]
    if unknown or not asked:
        raise ArgumentTypeError(f"{', '.join(map(repr, unknown)) or 'nothing'} is not among {', '.join(known)}")
    return tuple(word for word in known if word in asked)
