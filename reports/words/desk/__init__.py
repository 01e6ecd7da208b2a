"""What is answered to an act: what was recorded, what is there, what comes next."""
