"""How the longer answers are shown, a file a command, in the rooms of the other floors."""
