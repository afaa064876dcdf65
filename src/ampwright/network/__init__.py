"""Whether the network operator is told afterwards, asked first, or the work must stop."""
