"""Ampwright: from the first facts of a home to a verified charge point."""
