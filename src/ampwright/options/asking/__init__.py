"""What is certain of a home that is not wholly known, and what to ask next."""
