"""Doubt: propagation and conformity beside published examples."""
