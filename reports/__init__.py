"""What is shown of the book: view models first, then their renderings."""
