"""What earths the point, and whether the earthing and bonding it leans on are right."""
