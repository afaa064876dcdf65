"""The way, the circuit, the earthing and the board of one charge point."""
