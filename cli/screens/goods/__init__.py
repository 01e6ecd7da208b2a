"""Screens: labels and complaints."""
