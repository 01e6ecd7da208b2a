"""Goods in words: labels, complaints."""
