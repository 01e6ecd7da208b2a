"""How the longer answers are shown, a file a command."""
