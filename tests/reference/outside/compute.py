#!/usr/bin/env python3
"""Computes check values with general libraries and writes them as rows of the form of ../formulas.csv. See `run`."""

from importlib.metadata import version
from math import pi
from pathlib import Path

import fluids
import psychrolib
from CoolProp.CoolProp import PropsSI

from burning import Burned, FUELS, SEA_LEVEL

FOOT = 0.3048
INCH_OF_WATER = 248.84
HERE = Path(__file__).parent


def combustion():
    """Tolerances: 0.02 points or kelvin for the 0.09 % of butanes in natural gas that the libraries' mechanism does not have;
    0.04 points of efficiency and 0.1 % of a volume for that and for heats of combustion, which differ by 0.03 %; more where
    the input's last digit is magnified: the share that condenses near the dew point, and excess air by carbon dioxide."""
    for fuel in FUELS:
        for excess in (0.05, 0.15, 0.3, 0.5, 0.8, 1.2, 1.8):
            burned = Burned(fuel, excess)
            oxygen, carbon_dioxide = burned.dry("O2"), burned.dry("CO2")
            o2, co2 = f"{oxygen:.5f} %", f"{carbon_dioxide:.5f} %"
            by = "cantera"
            within = f"{0.05 + 0.1 * excess:.2f} %"
            yield f"excess_air_{fuel}", [o2], f"{100 * excess:.0f} %", "0.02 %", by
            yield f"excess_air_{fuel}_from_co2", [co2], f"{100 * excess:.0f} %", within, by
            dew_point = f"{burned.dew_point():.3f} °C"
            yield f"flue_gas_dew_point_{fuel}", [o2], dew_point, "0.02 °C", "cantera; CoolProp, PsychroLib"
            for celsius in (30, 40, 50):
                share = f"{burned.condensed(celsius):.3f} %"
                yield f"condensed_share_{fuel}", [o2, f"{celsius} °C"], share, "0.15 %", "cantera; PsychroLib"
            for celsius, feet in ((45, 0), (45, 5000), (120, 5000), (200, 0)):
                pressure = psychrolib.GetStandardAtmPressure(feet * FOOT)
                flow = burned.volume_per_heat(celsius, pressure) * 25_000 * 3600
                inputs = ["25 kW", o2, f"{celsius} °C", f"{feet} ft"]
                yield f"flue_gas_volume_{fuel}", inputs, f"{flow:.4f} m3/h", f"{flow * 1e-3:.4f} m3/h", "cantera; PsychroLib"
            for net in (60, 150, 300):
                efficiency = f"{burned.efficiency(net):.4f} %"
                warmth = f"{net * 1.8:g} °F"
                by = "cantera; CoolProp"
                yield f"combustion_efficiency_{fuel}", [o2, warmth], efficiency, "0.04 %", by
                yield f"combustion_efficiency_{fuel}_from_co2", [co2, warmth], efficiency, "0.04 %", by
        burned = Burned(fuel, 0.0)
        density = PropsSI("D", "T", 293.15, "P", SEA_LEVEL, "Water")
        rate = burned.water_per_heat() * 20_000 / density * 1000 * 3600
        yield f"condensate_{fuel}", ["20 kW", "100 %"], f"{rate:.5f} L/h", "0.005 L/h", "cantera; CoolProp"
        gas = {"CH4": 0, "C2H6": 0, "C3H8": 0, "C4H10": 0, "N2": 0, "CO2": 0} | FUELS[fuel]
        shares = [f"{100 * share / sum(gas.values()):.6f} %" for share in gas.values()]
        yield "ultimate_co2_of_gas", shares, f"{burned.dry('CO2'):.5f} %", "0.002 %", "cantera"


def air():
    """Tolerances: 0.1 % for the density of a real gas at the cold end; 0.3 % for viscosity, of which tables differ by more."""
    for feet in (0, 1000, 3000, 5000, 8000, 10000):
        pressure = psychrolib.GetStandardAtmPressure(feet * FOOT)
        for fahrenheit in (0, 40, 70, 120):
            kelvin = (fahrenheit + 459.67) / 1.8
            density = PropsSI("D", "T", kelvin, "P", pressure, "Air")
            inputs = [f"{feet} ft", f"{fahrenheit} °F"]
            yield "air_density", inputs, f"{density:.5f} kg/m3", f"{density * 1e-3:.5f} kg/m3", "PsychroLib; CoolProp"
    density = 1.2014
    viscosity = PropsSI("V", "T", 294.26, "P", SEA_LEVEL, "Air")
    for cfm, inches, rough in ((80, 5, 3e-4), (150, 7, 3e-4), (300, 9, 3e-4), (800, 14, 3e-4), (1600, 18, 3e-4), (120, 6, 3e-3)):
        diameter = inches * FOOT / 12
        velocity = cfm * FOOT**3 / 60 / (pi / 4 * diameter**2)
        reynolds = fluids.Reynolds(V=velocity, D=diameter, rho=density, mu=viscosity)
        factor = fluids.friction_factor(Re=reynolds, eD=rough * FOOT / diameter, Method="Colebrook")
        drop = fluids.dP_from_K(K=factor * 100 * FOOT / diameter, rho=density, V=velocity) / INCH_OF_WATER
        inputs = [f"{cfm} CFM", f"{inches} in", f"{rough:g} ft"]
        yield "duct_friction_rate", inputs, f"{drop:.5f} in.w.c.", f"{drop * 3e-3:.5f} in.w.c.", "fluids; CoolProp"


def gas():
    """Tolerance: 0.3 % for the rounded constant of the program's equation and the density of air in it."""
    air_density = PropsSI("D", "T", 288.706, "P", SEA_LEVEL, "Air")
    for inches, pressure, gravity in ((0.042, 3.5, 0.60), (0.0465, 3.2, 0.60), (0.055, 3.5, 0.58), (0.0292, 10, 1.52), (0.036, 11, 1.52)):
        # A hole out of a chamber a hundred times as wide: no velocity of approach.
        mass = fluids.flow_meter_discharge(
            D=inches * FOOT / 12 * 100, Do=inches * FOOT / 12, P1=SEA_LEVEL + pressure * INCH_OF_WATER, P2=SEA_LEVEL,
            rho=gravity * air_density, C=0.9, expansibility=1.0,
        )
        flow = mass / (gravity * air_density) / FOOT**3 * 3600
        inputs = [f"{inches} in", f"{pressure} in.w.c.", f"{gravity}", "0.9"]
        yield "orifice_flow", inputs, f"{flow:.4f} ft3/h", f"{flow * 3e-3:.4f} ft3/h", "fluids; CoolProp"


def write(name, rows, says):
    versions = ", ".join(f"{library} {version(library)}" for library in ("cantera", "CoolProp", "fluids", "PsychroLib"))
    text = [f"# Computed by compute.py, not published: {versions}."]
    text += [f"# {line.strip()}" for line in says.strip().splitlines()]
    text.append("formula,inputs,result,within,origin")
    for formula, inputs, result, within, by in rows:
        text.append(f"{formula},{';'.join(inputs)},{result},{within},computed: {by}")
    (HERE / f"{name}.csv").write_text("\n".join(text) + "\n", encoding="utf-8")


for part in (combustion, air, gas):
    write(part.__name__, part(), part.__doc__)
