"""The circuit of a point: its device, its cable leg by leg, faults, and volts at its end."""
