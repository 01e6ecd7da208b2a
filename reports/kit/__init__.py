"""What every report shares: values as people read them, figures, tables."""
