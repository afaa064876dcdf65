"""Whole homes, from their facts to the decision, the options and the working."""
