"""The sums of the trade: pure, standard library only; floats inside, rounding said outside."""
