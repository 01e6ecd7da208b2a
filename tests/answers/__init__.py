"""Every command's answers, kept whole: what it prints, what it answers to machines, its papers."""
