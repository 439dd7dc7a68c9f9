"""What the order of work has to say, in words."""

from __future__ import annotations

from collections.abc import Sequence
from difflib import get_close_matches

from setout.diagnostics import Diagnostic, Label, error, note
from setout.plan.order.draft import Link
from setout.plan.order.model import StepId
from setout.read.model import StepRef
from setout.source import Span

_SHOWN = 12

WHY = {
    "measure-first": "it hangs on that measure",
    "measure-holes": "holes or cuts hang on that measure",
    "measure-inside": "where its boards go hangs on that measure",
    "measure-place": "its place hangs on that measure",
    "cut-first": "it takes boards that are cut there",
    "machine-first": "it takes boards that are machined there",
    "inner-first": "the one goes into the other",
    "assemble-first": "it must be put together first",
    "glue-cures": "its glue must cure first",
    "fit-before-hang": "hardware goes on before hanging",
    "fit-before-set": "hardware goes on before setting in place",
    "stands-on": "the one stands on the other",
    "runs-in": "a drawer runs in when its case stands",
    "goes-on-last": "it goes on when what holds it stands",
    "set-first": "both must be in place before they are fastened",
    "declared": "this line says so",
}
NOTHING = {
    "machine": "it has no holes, housings or cut-outs",
    "assemble": "it is not put together from several boards",
    "cure": "none of its joints is glued",
    "fit": "no hardware is fitted to it",
    "set": "it is not put in place on its own",
    "hang": "it is not put in place on its own",
    "fasten": "nothing is left to fasten once it is in place",
    "cut": "it has no boards",
}


def label(step: StepId, text: str = "") -> str:
    """A step as an order line names it."""
    if step.verb == "step":
        return f'"{text or step.target}"'
    return f"{step.verb} {step.target or 'project'}"


def no_such_step(ref: StepRef, known: bool, labels: Sequence[str]) -> Diagnostic:
    """`known`: the name stands for something, but there is no such step for it."""
    said = _said(ref)
    verb = ref.verb.text if ref.verb else ""
    if known:
        says = f"there is nothing to {verb} in it: {NOTHING[verb]}"
    else:
        says = "no own step has this text" if ref.text else "nothing in this job goes by that name"
    near = get_close_matches(said, labels, 3, 0.6) or [x for x in labels if verb and x.startswith(f"{verb} ")][:3]
    advice = f"steps near it: {', '.join(near)}" if near else f"the steps are: {', '.join(labels[:_SHOWN])}"
    return error("rod500", f"There is no step `{said}`", ref.span, says, help=advice if labels else "")


def goes_round(loop: Sequence[Link], texts: dict[StepId, str]) -> Diagnostic:
    """`loop`: each link's `after` is the next one's `before`; the first is an order line, if any is."""
    names = [label(link.before, texts.get(link.before, "")) for link in loop]
    said = [f"{a} before {b}: {WHY[link.kind]}" for link, a, b in zip(loop, names, [*names[1:], names[0]])]
    places = [(link.span, text) for link, text in zip(loop, said) if link.span is not None]
    at, first = places[0] if places else (None, "")
    shown = names if len(names) <= _SHOWN else [*names[: _SHOWN - 1], "…"]
    return error(
        "rod501",
        "The order of work goes round in a loop",
        at,
        first,
        *(Label(span, text) for span, text in places[1:_SHOWN]),
        help=f"{' → '.join([*shown, names[0]])}. Turn one of the order lines round, or leave it out",
    )


def says_nothing_new(first: str, then: str, span: Span) -> Diagnostic:
    return note(
        "rod502",
        "This order line changes nothing",
        span,
        f"{first} comes before {then} without it",
        help="leave it out, or say what else it was meant to bring forward",
    )


def own_step_twice(text: str, span: Span, first: Span | None) -> Diagnostic:
    others = (Label(first, "the first is here"),) if first else ()
    return error(
        "rod503",
        f'Two steps are called "{text}"',
        span,
        "this text is taken",
        *others,
        help="give each step of your own a text of its own, so that order lines can name it",
    )


def _said(ref: StepRef) -> str:
    if ref.text is not None:
        return f'"{ref.text.value}"'
    return f"{ref.verb.text if ref.verb else ''} {ref.target.text if ref.target else ''}".strip()
