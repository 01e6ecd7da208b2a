"""The engines on which a test can be run.

Most tests run on a file: what the service asks of a server is held by the contract of the store and
by all answers about a book with a row in every table (`tests/service/desk/test_answers.py`).
"""

import pytest

ON_EACH_ENGINE = pytest.mark.parametrize("keeper", ["sqlite", "postgres"], indirect=True)
"""Marks a test of a book on a file and on a server, where each reads in a way of its own."""
