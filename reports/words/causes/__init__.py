"""Why lots failed and what trials tell, in words."""
