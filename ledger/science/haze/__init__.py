"""How clear a liquid will be: what of an oil dissolves in it, and how its drops scatter light."""
