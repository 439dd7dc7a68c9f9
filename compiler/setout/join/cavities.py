"""The material that is milled away so that another board can enter."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from fractions import Fraction

from setout.diagnostics import Diagnostic
from setout.geometry import Axis, Box, Vec
from setout.join import problems
from setout.join.ground import Ground
from setout.join.model import Cavity, Contact
from setout.place.model import Board, Method, Notch


def run_axis(a: Board, contact: Contact) -> Axis:
    """Along which axis a housing for the edge of `a` runs."""
    return Axis(3 - contact.face_a.axis - a.thick)


def cavity(ground: Ground, boxes: Mapping[str, Box], contact: Contact, method: Method, depth: Fraction) -> Cavity:
    """The entering board's thickness, `depth` deep, run right through the receiver but where it is stopped."""
    assert contact.b is not None
    a, b = ground.board(contact.a), ground.board(contact.b)
    whole, run = boxes[contact.b], run_axis(a, contact)
    box = whole.with_span(contact.face_a.axis, *_span(contact, depth))
    box = box.with_span(a.thick, max(whole.lo[a.thick], a.box.lo[a.thick]), min(whole.hi[a.thick], a.box.hi[a.thick]))
    for face, short in method.stopped:
        stop = b.box.face(face) - face.sign * short
        ends = (box.lo[run], stop) if face.sign > 0 else (stop, box.hi[run])
        box = box.with_span(run, *ends)
    stopped = tuple(face for face, _ in method.stopped)
    return Cavity(method.kind, contact.face_b, box, run, depth, box.size(a.thick), contact.a, stopped, contact.joint)


def stop_notches(
    ground: Ground, boxes: Mapping[str, Box], contact: Contact, method: Method, growth: Fraction
) -> Iterator[Notch]:
    """What the entering board's tongue loses where the housing stops short of it."""
    assert contact.b is not None
    a, b = ground.board(contact.a), ground.board(contact.b)
    run, tongue = run_axis(a, contact), boxes[contact.a].with_span(contact.face_a.axis, *_span(contact, growth))
    for face, short in method.stopped:
        stop = b.box.face(face) - face.sign * short
        end = tongue.face(face)
        if (end - stop) * face.sign > 0:
            yield Notch("notch", tongue.with_span(run, min(stop, end), max(stop, end)), method.span)


def stops_wrong(ground: Ground, contact: Contact, method: Method) -> Diagnostic | None:
    """A housing can stop only short of the faces it runs to, and by less than it is long."""
    assert contact.b is not None
    b, run = ground.board(contact.b), run_axis(ground.board(contact.a), contact)
    for face, _ in method.stopped:
        if face.axis != run:
            return problems.stopped_across(method, b, face, run)
    room = b.box.size(run) - sum(short for _, short in method.stopped)
    if room <= 0 or any(short < 0 for _, short in method.stopped):
        return problems.stopped_away(ground, method, b, run)
    return None


def _span(contact: Contact, depth: Fraction) -> tuple[Fraction, Fraction]:
    """From the shoulder `depth` into the receiver."""
    plane: Vec = contact.area.lo
    ends = (plane[contact.face_a.axis], plane[contact.face_a.axis] + contact.face_a.sign * depth)
    return min(ends), max(ends)
