"""What a lot holds, costs and brings into a glass, from what was put in."""
