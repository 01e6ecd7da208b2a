"""Lets the contracts, which are no test modules themselves, tell what differed."""

import pytest

for part in ("contract", "contract_rows", "contract_guards", "contract_changes"):
    pytest.register_assert_rewrite(f"tests.store.{part}")
