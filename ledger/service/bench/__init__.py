"""What is done to a batch, from receiving to the finish."""
