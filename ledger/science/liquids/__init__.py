"""Ethanol, sugar and water: densities, strengths, dilutions, syrups."""
