"""The commands, a file each, named as the command."""
