"""The board that feeds the point: room in it, what stands in front, or a small one of its own."""
