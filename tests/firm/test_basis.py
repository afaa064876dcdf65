"""The basis a firm works by: shipped data that loads, a firm's own that replaces it."""

from __future__ import annotations

from dataclasses import FrozenInstanceError, fields
from datetime import date

import pytest

from ampwright.firm import files
from ampwright.firm.basis import Basis, load_basis
from ampwright.firm.catalogue import Detection, DeviceKind, RcdType
from ampwright.firm.driving import read_driving
from ampwright.firm.files import NAMES, read_files
from ampwright.foundations.errors import BadFileError, NotFoundError, TableCardError
from ampwright.foundations.working import orphans, working
from ampwright.tables.capacity import CableFamily, sizes_of

ON = date(2026, 11, 25)
BASIS = load_basis(design_date=ON, profile="neutral")


def own(folder, name, *changes):
    """Write a firm's own file: the shipped one with some changes."""
    text = read_files(None)[name].text
    for was, becomes in changes:
        assert was in text
        text = text.replace(was, becomes)
    (folder / f"{name}.csv").write_text(text, encoding="utf-8")
    return folder


class TestShipped:
    def test_says_which_edition_its_figures_are_of(self):
        assert "2018+A4:2026" in BASIS.edition
        assert "A2:2022" in BASIS.edition

    def test_is_compared_by_identity_and_frozen(self):
        other = load_basis(design_date=ON, profile="neutral")
        assert other != BASIS
        assert len({BASIS, other}) == 2
        with pytest.raises(FrozenInstanceError):
            BASIS.digest = ""  # type: ignore[misc]

    def test_rows_are_values_and_may_be_choices(self):
        other = load_basis(design_date=ON, profile="demo")
        assert set(BASIS.catalogue.points) == set(other.catalogue.points)

    def test_the_points_differ_in_all_that_a_design_turns_on(self):
        points = BASIS.catalogue.points
        assert {each.phases for each in points} == {1, 3}
        assert {each.detection for each in points} == set(Detection)
        assert {each.built_in_rcd for each in points} == {RcdType.NONE, RcdType.A}
        assert {each.setting_locked for each in points} == {True, False}
        three = [each for each in points if each.phases == 3]
        assert {each.detects_three_phase for each in three} == {True, False}

    def test_every_family_has_a_cable_for_each_phase_count_it_serves(self):
        for each in BASIS.catalogue.cables:
            assert each.size_mm2 in sizes_of(each.family), each.id

    def test_a_breaker_has_no_rcd_and_an_rcbo_has(self):
        for each in BASIS.catalogue.devices:
            assert (each.rcd_type is RcdType.NONE) is (each.kind is DeviceKind.BREAKER), each.id

    def test_hours_of_a_task_rise_from_low_to_high(self):
        for each in BASIS.tasks:
            low, usual, high = each.minutes
            assert 0 < low <= usual <= high, each.id

    def test_names_that_lead_nowhere_say_what_is_near(self):
        with pytest.raises(NotFoundError, match="Did you mean window-lead"):
            BASIS.catalogue.point("windowlead")
        with pytest.raises(NotFoundError, match="operator profile 'northern'"):
            load_basis(design_date=ON, profile="northern")


class TestCables:
    def test_found_by_what_they_are(self):
        find = BASIS.catalogue.cable
        assert find(CableFamily.SHEATHED, 3, 6.0, data_cores=True).id == "sheathed-3-6-data"
        assert find(CableFamily.SHEATHED, 3, 6.0, data_cores=False).id == "sheathed-3-6"
        assert find(CableFamily.ARMOURED, 5, 10.0, data_cores=False).id == "armoured-5-10"

    @pytest.mark.parametrize(
        "asked",
        [(CableFamily.FLAT, 5, 6.0, False), (CableFamily.FLAT, 3, 35.0, False),
         (CableFamily.FLAT, 3, 6.0, True)],
    )  # fmt: skip
    def test_one_that_is_not_made_is_not_found(self, asked):
        *which, data = asked
        with pytest.raises(NotFoundError, match="there is no cable 'flat"):
            BASIS.catalogue.cable(*which, data_cores=data)


class TestDriving:
    def test_what_a_mile_takes(self):
        # Common practice: 2 to 4 miles on a kilowatt-hour, a tenth lost between wall and battery.
        assert (BASIS.driving.miles_per_kwh, BASIS.driving.charging_efficiency) == (3.5, 0.9)

    @pytest.mark.parametrize(
        ("was", "bad", "expected"),
        [("miles_per_kwh", "miles_per_litre", "line 2: name is 'miles_per_litre'"),
         ("charging_efficiency,0.90,owners' comparison", "#", "also charging_efficiency")],
    )  # fmt: skip
    def test_a_figure_unknown_or_missing_is_named(self, was, bad, expected):
        text = read_files(None)["driving"].text
        if bad == "#":
            text = "\n".join(line for line in text.splitlines() if not line.startswith(was))
        with pytest.raises(BadFileError, match=expected):
            read_driving("driving", text.replace(was, bad))


class TestDigest:
    def test_the_same_data_has_the_same_digest(self):
        assert load_basis(design_date=ON, profile="demo").digest == BASIS.digest

    @pytest.mark.parametrize("name", sorted(set(NAMES) - {"limits"}))
    def test_any_file_changes_it(self, tmp_path, name):
        (tmp_path / f"{name}.csv").write_text(read_files(None)[name].text + "\n", encoding="utf-8")
        changed = load_basis(design_date=ON, profile="neutral", folder=tmp_path)
        assert changed.digest != BASIS.digest

    def test_a_shipped_file_that_is_not_its_cards_is_refused(self, monkeypatch, tmp_path):
        (tmp_path / "data").mkdir()
        for name in NAMES:
            shipped = read_files(None)[name].text
            (tmp_path / "data" / f"{name}.csv").write_text(shipped + "\n", encoding="utf-8")
            (tmp_path / "data" / f"{name}.toml").write_text('title = "x"\nsha256 = "0"\n')
        monkeypatch.setattr(files, "files", lambda _: tmp_path)
        with pytest.raises(TableCardError, match="not the file its card describes"):
            read_files(None)


class TestOwnFiles:
    def test_replace_the_shipped_one_of_their_name(self, tmp_path):
        own(tmp_path, "rules", ("house_limit_a,60", "house_limit_a,55"))
        basis = load_basis(design_date=ON, profile="neutral", folder=tmp_path)
        assert basis.rules.house_limit_a == 55.0
        assert basis.catalogue.points == BASIS.catalogue.points

    def test_a_file_from_a_spreadsheet_reads(self, tmp_path):
        text = read_files(None)["rules"].text
        (tmp_path / "rules.csv").write_text(text + "\n", encoding="utf-8-sig", newline="\r\n")
        basis = load_basis(design_date=ON, profile="neutral", folder=tmp_path)
        assert basis.rules == BASIS.rules

    def test_cannot_change_the_law(self, tmp_path):
        own(tmp_path, "limits", ("drop_share,0.05", "drop_share,0.5"))
        with pytest.raises(NotFoundError, match="no data file of a firm 'limits'"):
            load_basis(design_date=ON, profile="neutral", folder=tmp_path)

    def test_cannot_loosen_the_law(self, tmp_path):
        own(tmp_path, "rules", ("drop_share,0.05", "drop_share,0.06"))
        with pytest.raises(BadFileError, match="tighten the law"):
            load_basis(design_date=ON, profile="neutral", folder=tmp_path)

    def test_a_bad_cell_names_the_file_and_its_line(self, tmp_path):
        own(tmp_path, "points", ("volts window", "magic"))
        with pytest.raises(
            BadFileError, match=r"own points: 6 problems(.|\n)*line 2: detection is 'magic'"
        ):
            load_basis(design_date=ON, profile="neutral", folder=tmp_path)


class TestDocumented:
    SHOWN = BASIS.documented()

    def test_is_the_same_basis(self):
        assert self.SHOWN.digest == BASIS.digest
        assert self.SHOWN.rules == BASIS.rules
        assert self.SHOWN.documented() is self.SHOWN
        assert self.SHOWN.book.keeps_working
        assert {each.name for each in fields(Basis)} >= {"edition", "design_date", "profile"}

    def test_numbers_of_a_row_say_whose_they_are(self):
        point = self.SHOWN.cited(BASIS.catalogue.point("window-lead"))
        assert [str(line) for line in working(point.max_a)] == [
            "Imax = 32 A  [catalogue: window-lead, most current it can be set to, on each line]"
        ]

    def test_numbers_of_rules_profile_and_driving_too(self):
        shown = self.SHOWN
        lines = [str(line) for number in (
            shown.rules.voltage_margin_v, shown.profile.threshold(1), shown.driving.miles_per_kwh
        ) for line in working(number)]  # fmt: skip
        assert "firm rule" in lines[0]
        assert "common practice" in lines[0]
        assert "earlier edition" in lines[1]
        assert "common practice" in lines[2]
        assert not orphans(shown.rules.drop_share)

    def test_a_plain_basis_hands_rows_back_as_they_are(self):
        point = BASIS.catalogue.points[0]
        assert BASIS.cited(point) is point
