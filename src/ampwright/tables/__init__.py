"""Published tables as data: a CSV file and a card that says what it is, read by typed look-ups."""
