"""What all commands share: the call, options, answers, tables, files."""
