"""The batch sheet on paper."""
