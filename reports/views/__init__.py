"""What papers show, as plain frozen data, a file a room."""
