"""The usual slips of the trade, remarked on."""
