"""Looking up: stock, one lot, the journal, traces, what is due."""
