"""Who and what there is: house, people, materials, parties, formulas, limits."""
