"""Papers: the only place that knows ReportLab."""
