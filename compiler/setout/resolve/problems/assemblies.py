"""Assemblies, their parameters and what they hold."""

from __future__ import annotations

from collections.abc import Sequence

from setout.diagnostics import Diagnostic, Label, error
from setout.read import model as r
from setout.resolve.problems.wording import listed, perhaps
from setout.source import Span

__all__ = ["argument_kind", "argument_missing", "assembly_loop", "unknown_parameter"]


def unknown_parameter(name: r.Name, assembly: r.AssemblyStatement, known: Sequence[str]) -> Diagnostic:
    holder = assembly.name.text
    none = f"`{holder}` has none: write `assembly {holder} ({name.text} = …)` to give it one"
    return error(
        "rod225",
        f"`{holder}` has no parameter `{name.text}`",
        name.span,
        "not known",
        Label(assembly.head, "the assembly"),
        help=perhaps(name.text, known, f"it has {listed(known)}" if known else none),
    )


def argument_missing(place: r.PlaceStatement, assembly: r.AssemblyStatement, missing: Sequence[str]) -> Diagnostic:
    holder = assembly.name.text
    example = ", ".join(f"{name} = …" for name in missing)
    return error(
        "rod226",
        f"`{holder}` needs {listed(missing)}",
        place.assembly.span,
        "not said here",
        Label(assembly.head, "without a default"),
        help=f"write `place {holder} ({example})`, or give the parameter a default",
    )


def argument_kind(name: r.Name, assembly: r.AssemblyStatement, expr: r.Expr, stock: bool) -> Diagnostic:
    holder = assembly.name.text
    if stock:
        said, help = "holds a stock", "name a stock"
    else:
        said, help = "holds a number, not a stock", "write a number, or the stock's thickness: `ply.thick`"
    return error(
        "rod227", f"`{name.text}` of `{holder}` {said}", expr.span, "", Label(assembly.head, "the assembly"), help=help
    )


def assembly_loop(names: Sequence[str], span: Span) -> Diagnostic:
    if len(names) == 2:
        return error(
            "rod229", f"`{names[0]}` would hold itself", span, "placed in itself", help="take this `place` out"
        )
    return error(
        "rod229",
        "Assemblies would hold one another without end",
        span,
        " → ".join(names if len(names) < 10 else [*names[:8], "…", names[-1]]),
        help="take one of these `place`s out",
    )
