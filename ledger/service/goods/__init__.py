"""Bottles and labels, sending, counting, complaints."""
