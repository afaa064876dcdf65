"""The papers: one folder a document (pure content and a template) and one renderer."""
