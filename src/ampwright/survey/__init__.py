"""The register of facts, the records and how they fold together, the home file, the views."""
