"""What a network operator asks: when to tell, when to ask first, when to stop."""
