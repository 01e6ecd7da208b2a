"""The desk: one act read, checked and recorded, with all that the rules may see."""
