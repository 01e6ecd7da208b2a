"""What all answers for machines share: amounts, times, a lot in brief, a seal."""
