"""What all tests share."""

from hypothesis import settings

# Two busy cores make single examples slow now and then; that is not a finding.
settings.register_profile("shared", parent=settings.default, deadline=None)
settings.load_profile("shared")
