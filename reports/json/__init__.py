"""The answers for machines, a folder a room: stable keys, amounts with their unit."""
