"""The book as a whole: copies, imports, upgrades, and the invented season."""
