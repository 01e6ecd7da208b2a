"""What holds for every entry: names, times, amounts, volumes, genealogy, status."""
