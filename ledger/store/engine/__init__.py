"""The engines: opening a file or server, transactions, statements, files."""
