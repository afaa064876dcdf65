"""Clauses of the standards: one small pure function each, numbers in, a number or a check out."""
