"""One unit for each kind of quantity; the type checker keeps them apart."""

from __future__ import annotations

from typing import NewType

Amperes = NewType("Amperes", float)
Kiloamperes = NewType("Kiloamperes", float)
Milliamperes = NewType("Milliamperes", float)
Volts = NewType("Volts", float)
Ohms = NewType("Ohms", float)
OhmsPerKm = NewType("OhmsPerKm", float)
MilliVoltsPerAmpMetre = NewType("MilliVoltsPerAmpMetre", float)
OhmMetres = NewType("OhmMetres", float)
Metres = NewType("Metres", float)
Millimetres = NewType("Millimetres", float)
SquareMm = NewType("SquareMm", float)
SquareMetres = NewType("SquareMetres", float)
Celsius = NewType("Celsius", float)
Seconds = NewType("Seconds", float)
Minutes = NewType("Minutes", float)
Hours = NewType("Hours", float)
Kilowatts = NewType("Kilowatts", float)
KilowattHours = NewType("KilowattHours", float)
AmpereSquaredSeconds = NewType("AmpereSquaredSeconds", float)
AdiabaticK = NewType("AdiabaticK", float)
Miles = NewType("Miles", float)
MilesPerKwh = NewType("MilesPerKwh", float)
PencePerKwh = NewType("PencePerKwh", float)
ExactPence = NewType("ExactPence", float)
"""Pence before rounding, as a working gives them; ``money.Pence`` are whole."""
PencePerHour = NewType("PencePerHour", int)
PencePerMile = NewType("PencePerMile", int)
Share = NewType("Share", float)
"""A fraction from 0 to 1, or a factor; percentages exist only in print."""
Count = NewType("Count", int)
Year = NewType("Year", int)

UNIT_OF: dict[str, str] = {
    "Amperes": "A",
    "Kiloamperes": "kA",
    "Milliamperes": "mA",
    "Volts": "V",
    "Ohms": "Ω",
    "OhmsPerKm": "Ω/km",
    "MilliVoltsPerAmpMetre": "mV/A/m",
    "OhmMetres": "Ω·m",
    "Metres": "m",
    "Millimetres": "mm",
    "SquareMm": "mm²",
    "SquareMetres": "m²",
    "Celsius": "°C",
    "Seconds": "s",
    "Minutes": "min",
    "Hours": "h",
    "Kilowatts": "kW",
    "KilowattHours": "kWh",
    "AmpereSquaredSeconds": "A²s",
    "AdiabaticK": "A√s/mm²",
    "Miles": "miles",
    "MilesPerKwh": "miles/kWh",
    "PencePerKwh": "p/kWh",
    "Share": "",
    "Count": "",
    "Year": "",
    "ExactPence": "p",
    "Pence": "p",
    "PencePerHour": "p/h",
    "PencePerMile": "p/mile",
}
"""The printed unit of each kind of quantity, by the name of its type."""
