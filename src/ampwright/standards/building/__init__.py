"""What the building regulations of each country ask when a circuit is added to a home."""
