"""Faults laid under commands: kills, losses of power, full disks, lost answers, crowds."""
