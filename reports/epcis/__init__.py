"""What happened to goods as events of EPCIS 2.0, for a trading partner's programs."""
