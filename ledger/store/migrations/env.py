"""Required by Alembic's layout; migrations run through `ledger.store.form.migrate.migrate`."""
