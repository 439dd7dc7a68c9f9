"""What setout has to say about a spec, as data."""

from setout.diagnostics.model import Checked, Diagnostic, Label, Severity, error, note, warning

__all__ = ["Checked", "Diagnostic", "Label", "Severity", "error", "note", "warning"]
