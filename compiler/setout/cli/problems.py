"""What can go wrong around a spec: with its files, and with setout itself."""

from __future__ import annotations

import re
from dataclasses import replace

from setout.cli.terminal import shown
from setout.diagnostics import Diagnostic, error

NOT_INCLUDED = "rod165"  # resolve's own code: an included file can't be had

# why a file is not read: what is the matter, what to do
_REASONS = {
    "missing": ("there is no such file", "Look at the spelling, and at the folder you are in."),
    "folder": ("it is a folder", "Name the .rod file itself."),
    "special": ("it is not an ordinary file", "Only ordinary files are read, no devices and no pipes."),
    "unreadable": ("it can't be opened: {detail}", "See that it is there and that you may read it."),
    "outside": (
        "it is not inside the spec's own folder",
        "Move it there or below; links that lead out of the folder are not followed.",
    ),
    "many": (
        "the spec's files would come to more than 4 MB",
        "Take out what the job doesn't use.",
    ),
    "link": ("it is a link there", "Only ordinary files are read; name the file that the link leads to."),
    "submodule": ("it belongs to another repository there, a submodule", "Run it on a copy in that repository."),
    "large": ("it is larger there than a spec may be: {detail} bytes", "Name the .rod file itself."),
    "told": ("it is not the text of a spec", "What is the matter with it is told below."),
}


def spec_refused(name: str, reason: str, detail: str) -> Diagnostic:
    matter, what_to_do = _REASONS[reason]
    return error("rod901", f"Can't read {shown(name)}: {matter.format(detail=shown(detail))}", None, help=what_to_do)


def include_refused(found: Diagnostic, reason: str, detail: str) -> Diagnostic:
    """What a stage said of an included file that it could not have, with the reason."""
    if reason == "missing" or found.label is None:
        return found
    matter, what_to_do = _REASONS[reason]
    return replace(found, label=replace(found.label, text=matter.format(detail=shown(detail))), help=what_to_do)


def register_refused(name: str, reason: str, detail: str) -> Diagnostic:
    matter, _ = _REASONS[reason]
    return error(
        "rod904",
        f"Can't read the marks in {shown(name)}: {matter.format(detail=shown(detail))}",
        None,
        help="The marks already given stand in that file. Bring it back from version control, or move it out of the way"
        " if no board was ever marked from it.",
    )


def register_unwritable(name: str, detail: str) -> Diagnostic:
    return error(
        "rod904",
        f"Can't write the new marks to {shown(name)}: {detail}",
        None,
        help="No document was written either: boards marked from it would not be known next time."
        " See that the spec's folder can be written to.",
    )


def register_restless(name: str) -> Diagnostic:
    return error(
        "rod904",
        f"{shown(name)} keeps being changed by another build",
        None,
        help="Nothing was written. Run it again when the other one is done.",
    )


def out_unusable(folder: str, detail: str) -> Diagnostic:
    return error(
        "rod902",
        f"Can't write the documents to {shown(folder)}: {detail}",
        None,
        help="No document was changed. Choose another folder with --out, or make room there.",
    )


def out_would_overwrite(target: str) -> Diagnostic:
    return error(
        "rod903",
        f"The documents would be written over {shown(target)}",
        None,
        help="That file is the spec's own. Choose a folder for the documents alone with --out, or leave --out away.",
    )


def printing_unavailable(detail: str) -> Diagnostic:
    said = detail.split("\n", 1)[0]
    return error(
        "rod905",
        f"The PDF can't be made on this machine: {shown(said)}",
        None,
        help="It is set with Pango. On Debian and Ubuntu: apt install libpangoft2-1.0-0 libharfbuzz-subset0; on macOS:"
        " brew install pango. Without it the other documents can be had: --format html,csv,json,svg",
    )


def spec_unwritable(name: str, detail: str) -> Diagnostic:
    return error(
        "rod920",
        f"Can't write {shown(name)}: {shown(detail)}",
        None,
        help="Nothing was changed there. See that the folder is there, that you may write in it, and that no other"
        " program is writing the file.",
    )


def in_the_way(name: str, there: str) -> Diagnostic:
    """`there`: what was found, the spec itself or what is kept beside one."""
    what = ", marks of boards that may be cut" if there.endswith(".marks") else ""
    follows = "" if there == name else "It would belong to the new spec. "
    return error(
        "rod921",
        f"{shown(there)} is there already{what}",
        None,
        help=f"{follows}Nothing was written. Give the new spec another name, or move what is there out of the way.",
    )


def table_refused(name: str, reason: str, detail: str) -> Diagnostic:
    matter, _ = _REASONS[reason]
    return error(
        "rod922",
        f"Can't read the table {shown(name)}: {matter.format(detail=shown(detail))}",
        None,
        help="Name a file of values with commas, semicolons or tabs between them, as spreadsheets save it.",
    )


# --- revisions -------------------------------------------------------------------------------------------


def git_unusable(detail: str) -> Diagnostic:
    return error(
        "rod924",
        f"Can't ask Git for a revision: {_short(detail)}",
        None,
        help="Without Git two files can be compared: setout diff OLD.rod NEW.rod",
    )


def no_repository(name: str) -> Diagnostic:
    return error(
        "rod925",
        f"{_short(name)} is in no Git repository",
        None,
        help="What stands behind the @ is a revision of the repository that the file is kept in. Two files are compared"
        " without any: setout diff OLD.rod NEW.rod",
    )


def no_revision(name: str, revision: str) -> Diagnostic:
    return error(
        "rod926",
        f"The repository of {_short(name)} has no revision {_short(revision) or '(none is named)'}",
        None,
        help="Name a commit as Git does, such as HEAD~3, a branch or a tag; git log lists them.",
    )


def range_named(found: Diagnostic, name: str, revision: str) -> Diagnostic:
    """What was said of the revision; of a range, that it is two."""
    ends = re.fullmatch(r"([^:]*?)\.{2,3}([^:.][^:]*)?", revision)
    if found.code != "rod926" or ends is None:
        return found
    both = " ".join(f"{_short(name)}@{_short(end or 'HEAD')}" for end in ends.groups())
    return replace(found, help=f"A range is two revisions: name the file twice, setout diff {both}")


def not_at_revision(name: str, revision: str, reason: str, detail: str) -> Diagnostic:
    matter, what_to_do = _REASONS[reason]
    if reason == "missing":
        what_to_do = f"git log --follow -- {_short(name)} tells when it came and under which names."
    return error(
        "rod927",
        f"Can't read {_short(name)} at {_short(revision)}: {matter.format(detail=shown(detail))}",
        None,
        help=what_to_do,
    )


def _short(text: str) -> str:
    text = shown(text)
    return text if len(text) <= 120 else f"{text[:119]}…"
