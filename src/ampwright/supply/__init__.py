"""What the supply of a home can carry, the room that leaves, and the volts at its origin."""
