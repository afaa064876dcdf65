"""What every room stands on: quantities, working, checks, answers, sources, errors, money."""
