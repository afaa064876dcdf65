"""What a home asks of its supply at once, on each line, by the household table."""
