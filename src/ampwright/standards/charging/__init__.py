"""What the charging standards and the smart charging law say of the point itself."""
