"""The shipped basis on the day the tests are about."""

from __future__ import annotations

from dataclasses import replace
from datetime import date

from ampwright.firm.basis import load_basis

ON = date(2026, 11, 25)
BASIS = load_basis(design_date=ON, profile="demo")
NEUTRAL = load_basis(design_date=ON, profile="neutral")
NO_FIGURE = load_basis(design_date=ON, profile="no-figure")
LEAD = BASIS.catalogue.point("window-lead")
SMALL = BASIS.catalogue.point("window-lead-16")
THREE = BASIS.catalogue.point("three-socket")
BARE = BASIS.catalogue.point("bare-lead")
OPEN_SETTING = replace(LEAD, id="open-setting", setting_locked=False)
CARRIES_ON = replace(LEAD, id="carries-on", falls_to_a=32.0)
