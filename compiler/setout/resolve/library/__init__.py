"""Assemblies that setout ships, in its own language."""
