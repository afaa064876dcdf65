"""What the cars of a home need in a year, the hours that takes and what it costs to run."""
