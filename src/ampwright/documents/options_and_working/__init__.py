"""The paper "Options and working": what a home can have, why, and every number behind it."""
