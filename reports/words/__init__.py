"""The words of every answer, a folder a room; screen and paper take them from here."""
