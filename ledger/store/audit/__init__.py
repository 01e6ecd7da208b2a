"""Auditing: is every row what its entry says, and every entry what its hash says?"""
