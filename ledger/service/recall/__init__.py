"""Getting it back: a recall, its calls and its balance."""
