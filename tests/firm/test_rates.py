"""Prices and rates of a firm: shipped ones are whole, bad ones are refused with their line."""

from __future__ import annotations

from datetime import date

import pytest

from ampwright.firm.basis import load_basis
from ampwright.firm.files import read_files
from ampwright.firm.rates import LEVELS, Rate, SoldBy, card_columns
from ampwright.foundations.errors import BadFileError, NotFoundError
from ampwright.foundations.source import Trust
from ampwright.foundations.working import working

ON = date(2026, 11, 25)
BASIS = load_basis(design_date=ON, profile="neutral")
RATES = BASIS.rates


def load(folder, name, was, becomes):
    """A basis whose firm has changed one file."""
    text = read_files(None)[name].text
    assert was in text
    (folder / f"{name}.csv").write_text(text.replace(was, becomes, 1), encoding="utf-8")
    return load_basis(design_date=ON, profile="neutral", folder=folder)


class TestShipped:
    def test_everything_of_the_catalogue_has_a_price(self):
        catalogue = BASIS.catalogue
        listed = (
            *catalogue.points, *catalogue.devices, *catalogue.boards, *catalogue.origin_devices,
            *catalogue.cables,
        )  # fmt: skip
        assert [row.id for row in listed if row.id not in RATES.goods] == []

    def test_a_cable_is_sold_by_the_metre_and_only_a_point_is_a_point(self):
        metres = {id_ for id_, good in RATES.goods.items() if good.unit is SoldBy.METRE}
        assert {cable.id for cable in BASIS.catalogue.cables} <= metres
        points = {id_ for id_, good in RATES.goods.items() if good.point}
        assert points == {point.id for point in BASIS.catalogue.points}

    def test_a_larger_size_costs_more(self):
        for one in BASIS.catalogue.cables:
            for two in BASIS.catalogue.cables:
                alike = (one.family, one.cores, one.data_cores)
                if alike == (two.family, two.cores, two.data_cores) and one.size_mm2 < two.size_mm2:
                    assert RATES.goods[one.id].usual_p < RATES.goods[two.id].usual_p

    def test_no_price_pretends_to_be_published(self):
        assert {good.trust for good in RATES.goods.values()} == {Trust.MEMORY}

    # A model rate card of the trade, 2026, recalled: pence.
    @pytest.mark.parametrize(
        ("id_", "low", "high"),
        [
            ("window-lead", 38_000, 65_000), ("three-socket", 65_000, 95_000),
            ("post", 12_000, 25_000), ("rcbo-a-40", 2_500, 3_800), ("surge", 3_500, 6_000),
            ("rod", 1_800, 3_000), ("isolator-2", 1_500, 2_200), ("gland-armoured", 600, 900),
            ("service-connectors", 1_200, 2_000), ("sheathed-3-6-data", 550, 700),
            ("sheathed-3-10-data", 900, 1_100), ("armoured-3-6", 450, 550),
            ("armoured-3-10", 650, 800), ("armoured-3-16", 900, 1_100),
            ("armoured-3-25", 1_400, 1_700), ("armoured-5-6", 750, 900),
            ("armoured-5-10", 1_200, 1_400),
        ],
    )  # fmt: skip
    def test_prices_span_what_the_model_card_spans(self, id_, low, high):
        good = RATES.goods[id_]
        assert low <= good.low_p <= good.usual_p <= good.high_p <= high

    @pytest.mark.parametrize(
        ("id_", "pence"),
        [("flat-6", 280), ("flat-10", 500), ("tail-run", 450), ("earth-16", 230),
         ("earth-10", 150), ("data-cable", 60), ("trunking", 300), ("warning-tape", 15)],
    )  # fmt: skip
    def test_a_metre_costs_what_the_model_card_says(self, id_, pence):
        assert RATES.goods[id_].usual_p == pence

    def test_a_small_board_with_its_device_is_that_of_the_model_card(self):
        # Board with surge protection and RCBO £75 to £120, three-phase £220 to £320.
        one = RATES.goods["own-board"].usual_p + RATES.goods["rcbo-a-40"].usual_p
        three = RATES.goods["own-board-3"].usual_p + RATES.goods["rcbo-a-3-40"].usual_p
        assert 7_500 <= one <= 12_000
        assert 22_000 <= three <= 32_000

    def test_small_things_of_a_job_are_the_sundries_of_the_model_card(self):
        # Sundries £15 to £25 a job.
        small = ("sundries", "fixings", "terminals", "labels", "sleeve")
        assert 1_500 <= sum(RATES.goods[id_].usual_p for id_ in small) <= 2_500

    def test_hours_and_mark_ups_are_those_of_the_model_card(self):
        card = RATES.card
        assert 5_000 <= card.labour_p_per_h.low <= card.labour_p_per_h.usual == 5_200
        assert card.labour_p_per_h.high <= 5_800
        assert (card.point_markup_share.usual, card.materials_markup_share.usual) == (0.12, 0.15)
        assert (card.office_h.usual, card.office_p_per_h.usual) == (2.2, 2_500)
        assert card.travel_p_per_mile == Rate(50, 50, 50)


class TestLookUps:
    def test_a_good_without_a_price_is_not_made_up(self):
        with pytest.raises(NotFoundError, match="no price of a good 'gold'"):
            RATES.good("gold")

    def test_what_a_work_item_names_is_found_by_its_words(self):
        assert RATES.named("earth clamp with label") == "bond-clamp"
        assert RATES.named("switch-fuse 63 A, 3-phase") == "switch-fuse-3"
        assert RATES.named("switch-fuse 63 A, 2-phase") == ""

    def test_a_kit_depends_on_the_lines_of_the_point(self):
        sensors = [RATES.kit("sensor", phases)[0].quantity for phases in (1, 3)]
        assert sensors == [1, 3]
        assert RATES.kit("make-dead", 1) == ()

    def test_documented_numbers_say_whose_they_are(self):
        shown = BASIS.documented().rates
        good, kit, charge = shown.good("flat-6"), shown.kit("sensor", 3), shown.charge("isolator")
        lines = [str(line) for number in (
            good.usual_p, kit[0].quantity, charge.high_p, shown.card.office_h.usual,
        ) for line in working(number)]  # fmt: skip
        assert lines == [
            "p = 280 p  [price list: flat twin and earth 6 mm², usual trade price (memory)]",
            "n = 3  [kits: current-sensor for sensor, how much each time (common practice)]",
            "p = 12000 p  [charges of others: isolator after the meter by the supplier or the "
            "meter operator, what they ask at the most (memory)]",
            "t = 2.2 h  [rate card: hours of the office for a job: enquiry, survey, quotation, "
            "booking, network and papers, invoice (memory)]",
        ]
        assert RATES.good("flat-6") == good

    def test_the_card_has_a_unit_and_a_symbol_for_every_rate(self):
        units = {each.name: each.unit for each in card_columns()}
        assert units["labour_p_per_h"] == "p/h"
        assert units["travel_p_per_mile"] == "p/mile"
        assert units["offcuts_share"] == ""
        assert all(each.symbol and each.says for each in card_columns())


class TestOwnFiles:
    def test_a_firms_own_price_stands(self, tmp_path):
        basis = load(tmp_path, "prices", "flat-6,240,280,330", "flat-6,200,211,220")
        assert basis.rates.goods["flat-6"].usual_p == 211

    def test_a_catalogue_of_ones_own_may_have_things_without_a_price(self, tmp_path):
        basis = load(tmp_path, "boards", "own-board,", "our-board,")
        assert "our-board" not in basis.rates.goods

    @pytest.mark.parametrize(
        ("name", "was", "becomes", "expected"),
        [
            ("rates", "office_h,1.8,2.2", "office_h,2.8,2.2",
             "line 4: usual is '2.2'; expected no less than low, 2.8"),
            ("rates", "papers_p,2000", "papers_p,-1", "line 7: low is '-1'; expected no less than"),
            ("rates", "papers_p,2000", "papers_p,20.5", "low is '20.5'; expected a whole number"),
            ("rates", "papers_p", "paper_p", "line 7: name is 'paper_p'; expected each once"),
            ("rates", "papers_p", "office_h", "line 7: name is 'office_h'; expected each once"),
            ("rates", "overheads_share,0,0,0,memory,this firm's overheads are inside its hour\n",
             "", "line 1: the rates .*expected also overheads_share"),
            ("rates", "2000,memory", "2000,hearsay", "trust is 'hearsay'; expected one of publish"),
            ("rates", "offcuts_share,0.10,0.10", "offcuts_share,0.05,0.10",
             "line 15: low is '0.05'; expected the same at every level"),
            ("prices", "flat-6,240,280,330", "flat-6,290,280,330",
             r"line \d+: usual_p is '280'; expected no less than low_p, 290"),
            ("prices", "flat-6,240", "flat-6,2.40", "low_p is '2.40'; expected a whole number"),
            ("prices", "flat-10,", "flat-6,", "id is 'flat-6'; expected an id that stands once"),
            ("materials", "post,", "flat-6,", "expected an id that no price of the catalogue has"),
            ("materials", ",each,1200", ",dozen,1200", "unit is 'dozen'; expected one of each, m"),
            ("kits", "arrive,any,sundries", "arrive,any,sundry",
             "line 2: item is 'sundry'; expected the id of a material"),
            ("kits", "arrive,any,sundries", "arise,any,sundries",
             "line 2: work is 'arise'; expected one of"),
            ("kits", "arrive,any,sundries,1", "arrive,any,sundries,0",
             "line 2: quantity is '0'; expected more than nought"),
            ("kits", "arrive,any", "arrive,2", "line 2: phases is '2'; expected one of any, 1, 3"),
            ("kits", "mount-point,any,fixings", "arrive,any,sundries",
             "line 3: item is 'sundries'; expected a good that stands once"),
            ("third_party", "isolator,", ",", "line 2: remedy is ''; expected a value"),
        ],
    )  # fmt: skip
    def test_what_does_not_read_is_refused_with_its_line(
        self, tmp_path, name, was, becomes, expected
    ):
        with pytest.raises(BadFileError, match=expected):
            load(tmp_path, name, was, becomes)


def test_levels_are_named_once():
    assert LEVELS == ("low", "usual", "high")
