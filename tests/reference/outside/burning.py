"""Complete combustion, by way of libraries: cantera counts atoms and gives heats of formation, CoolProp the enthalpies of the
warm gases and the saturation line. No equation of the program is written again here."""

import cantera
import psychrolib
from CoolProp.CoolProp import PropsSI

psychrolib.SetUnitSystem(psychrolib.SI)

SEA_LEVEL = 101325.0
REFERENCE = 298.15
# Dry air as psychrometric handbooks have it, its argon apart.
AIR = {"O2": 0.20946, "N2": 0.78080, "AR": 0.00934, "CO2": 0.00040}
# The distributor's typical analysis that the program states for natural gas, its butanes counted as propane, which
# cantera's mechanism ends with: 0.09 % of the gas.
FUELS = {
    "natural": {"CH4": 95.0, "C2H6": 3.2, "C3H8": 0.29, "N2": 1.0, "CO2": 0.5},
    "propane": {"C3H8": 1.0},
}
GAS = cantera.Solution("gri30.yaml")
NAMES = {"O2": "Oxygen", "N2": "Nitrogen", "AR": "Argon", "CO2": "CarbonDioxide", "H2O": "Water"}


class Burned:
    """What burning the fuel with an excess of air leaves, in moles: `excess` 0.3 for 30 %."""

    def __init__(self, fuel, excess):
        self.fuel = FUELS[fuel]
        GAS.set_equivalence_ratio(1.0 / (1.0 + excess), self.fuel, AIR)
        mixture = GAS.mole_fraction_dict()
        atoms = {element: GAS.elemental_mole_fraction(element) for element in ("C", "H", "O", "N", "Ar")}
        whole = sum(n * sum(GAS.species(s).composition.values()) for s, n in mixture.items())
        atoms = {element: share * whole for element, share in atoms.items()}
        self.moles = {
            "CO2": atoms["C"],
            "H2O": atoms["H"] / 2,
            "N2": atoms["N"] / 2,
            "AR": atoms["Ar"],
            "O2": (atoms["O"] - 2 * atoms["C"] - atoms["H"] / 2) / 2,
        }
        GAS.TPX = REFERENCE, SEA_LEVEL, mixture
        before = GAS.enthalpy_mole
        GAS.TPX = REFERENCE, SEA_LEVEL, self.moles
        after = GAS.enthalpy_mole * sum(self.moles.values())
        latent = PropsSI("Hmolar", "T", REFERENCE, "Q", 1, "Water") - PropsSI("Hmolar", "T", REFERENCE, "Q", 0, "Water")
        # Per mole of mixture, in J; cantera counts in J/kmol.
        self.vapour = self.moles["H2O"] * latent
        self.heat = (before - after) / 1000 + self.vapour

    def dry(self, species):
        """The share of a species in the dry flue gas, in per cent."""
        return 100 * self.moles[species] / (sum(self.moles.values()) - self.moles["H2O"])

    def pressure_of_water(self):
        return SEA_LEVEL * self.moles["H2O"] / sum(self.moles.values())

    def dew_point(self):
        """In °C; two libraries must agree on it."""
        celsius = PropsSI("T", "P", self.pressure_of_water(), "Q", 1, "Water") - 273.15
        other = psychrolib.GetTDewPointFromVapPres(celsius + 5, self.pressure_of_water())
        assert abs(celsius - other) < 0.03, (celsius, other)
        return celsius

    def condensed(self, celsius):
        """The share of the water that has condensed, in per cent, where all has settled at a temperature."""
        saturated = psychrolib.GetSatVapPres(celsius)
        if saturated >= self.pressure_of_water():
            return 0.0
        dry = sum(self.moles.values()) - self.moles["H2O"]
        vapour = psychrolib.GetHumRatioFromVapPres(saturated, SEA_LEVEL) / 0.621945 * dry
        return 100 * (1 - vapour / self.moles["H2O"])

    def efficiency(self, net):
        """The share of the gross heat that stays when the flue gas leaves `net` kelvin warmer than the air came, in per cent."""
        def warmth(species):
            # At 100 Pa each is an ideal gas, as it nearly is in the flue.
            warm = PropsSI("Hmolar", "T", REFERENCE + net, "P", 100.0, NAMES[species])
            return warm - PropsSI("Hmolar", "T", REFERENCE, "P", 100.0, NAMES[species])

        carried = sum(moles * warmth(species) for species, moles in self.moles.items()) + self.vapour
        return 100 * (1 - carried / self.heat)

    def water_per_heat(self):
        """In kg/J."""
        return self.moles["H2O"] * PropsSI("molarmass", "Water") / self.heat

    def volume_per_heat(self, celsius, pressure):
        """In m³/J, at a temperature and a pressure in Pa, what has condensed there taken out."""
        moles = dict(self.moles)
        saturated = psychrolib.GetSatVapPres(celsius)
        if saturated < pressure * moles["H2O"] / sum(moles.values()):
            moles["H2O"] = psychrolib.GetHumRatioFromVapPres(saturated, pressure) / 0.621945 * (sum(moles.values()) - moles["H2O"])
        GAS.TPX = celsius + 273.15, pressure, moles
        # cantera counts in kmol.
        return sum(moles.values()) / 1000 / GAS.density_mole / self.heat
