"""What the wiring rules say of a charge point's circuit, its protection and its earthing."""
