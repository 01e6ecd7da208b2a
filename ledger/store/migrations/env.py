"""Required by Alembic's layout; migrations run through `ledger.store.create.migrate`."""
