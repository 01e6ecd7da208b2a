"""Goods for machines."""
