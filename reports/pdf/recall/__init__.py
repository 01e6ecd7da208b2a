"""The pack of a recall on paper."""
