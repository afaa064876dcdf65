"""One function for each thing a user asks for; files and the clock are here."""
