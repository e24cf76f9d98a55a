"""Thermal conductivity and heat capacity of dry air at 1 atm by CoolProp, which takes them from published correlations."""

import csv
import pathlib

from CoolProp.CoolProp import PropsSI

HERE = pathlib.Path(__file__).parent.parent
with open(HERE / "values.csv", "w", newline="") as file:
    out = csv.writer(file, lineterminator="\n")
    out.writerow(["id", "check", "degc", "expected", "j_per_m3k", "rel_tol", "source", "sure"])
    for degc in range(0, 140, 10):
        conductivity = PropsSI("conductivity", "T", degc + 273.15, "P", 101325, "Air")
        density = PropsSI("D", "T", degc + 273.15, "P", 101325, "Air")
        heat = density * PropsSI("C", "T", degc + 273.15, "P", 101325, "Air")
        out.writerow([f"air-{degc}", "still_air", degc, f"{conductivity:.6f}", f"{heat:.2f}", 1e-6, "script/air.py", "V"])
