"""The command line: reads it, calls one action and shows what came back."""
